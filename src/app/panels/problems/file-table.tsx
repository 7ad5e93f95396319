import { grouped } from '../../../presentation/grouped-figure.ts';
import type { ProblemEntry } from '../../../presentation/views/problem-view.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';

/** The files of the scenario: how large they are, and the heaviest that was met in each. */
export function FileTable({ entries }: { readonly entries: readonly ProblemEntry[] }) {
  const words = useWords().problems;
  const files = useSeason((season) => season.files);
  const missing = entries.flatMap(({ file }) => (file !== null && !files.has(file) ? [file] : []));
  const names = [...new Set([...files.keys(), ...missing])].sort();
  return (
    <table className="ruled files">
      <thead>
        <tr>
          <th scope="col">{words.file}</th>
          <th scope="col" className="number">
            {words.holds}
          </th>
          <th scope="col">{words.state}</th>
        </tr>
      </thead>
      <tbody>
        {names.map((name) => {
          const bytes = files.get(name);
          return (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td className="number">{bytes && words.bytes(grouped(bytes.length / 1000, 1))}</td>
              <td>
                <FileState entries={entries.filter(({ file }) => file === name)} there={bytes !== undefined} />
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function FileState({ entries, there }: { readonly entries: readonly ProblemEntry[]; readonly there: boolean }) {
  const words = useWords().problems;
  if (!there) return <b className="alarm">{words.missing}</b>;
  const [first] = entries;
  if (!first) return <span className="soft">{words.read}</span>;
  // Entries stand heaviest first.
  const count = entries.filter(({ weight }) => weight === first.weight).length;
  return (
    <b className={first.weight === 'noted' ? '' : 'alarm'}>
      {count} {words.weights[first.weight]}
    </b>
  );
}
