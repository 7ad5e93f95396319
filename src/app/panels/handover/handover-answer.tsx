import { countPacks } from '../../../presentation/papers/carried-goods.ts';
import type { CommunityTask } from '../../../presentation/papers/community-task.ts';
import { number, type PaperCase } from '../../../presentation/papers/paper-case.ts';
import { useView } from '../../state/use-stores.ts';
import { PaperLink } from '../paper-link.tsx';
import { useHandover } from './use-handover.ts';

/** Who gets what, in one sentence; and whose handover is shown. */
export default function HandoverAnswer() {
  const shown = useHandover();
  if (shown === null) return null;
  const { c, task } = shown;
  const { handover } = c.said;
  return (
    <>
      <h1>{task === null ? handover.chooseTitle : answerOf(c, task)}</h1>
      <p>{task === null ? handover.chooseWhy : placeOf(c, task)}</p>
      <ChooseCommunity c={c} />
      {task !== null && task.arrivals.length > 0 && (
        <p>
          <PaperLink paper="handover">{c.words.papers.sheet}</PaperLink>
        </p>
      )}
    </>
  );
}

const arriving = ({ arrivals }: CommunityTask) => arrivals.flatMap(({ goods }) => goods);
const usable = (task: CommunityTask) => arriving(task).filter(({ withheld }) => withheld === null);

function answerOf(c: PaperCase, task: CommunityTask): string {
  const { handover } = c.said;
  const { name } = task.about.community;
  const [packs, bags] = [countPacks(usable(task), 'inoculant'), countPacks(usable(task), 'seed')];
  const told = [
    ...(packs > 0 ? [handover.packs(number(c, packs), packs === 1)] : []),
    ...(bags > 0 ? [handover.bags(number(c, bags), bags === 1)] : []),
  ];
  const [first, second] = told;
  if (first === undefined) return handover.nothing(name);
  return handover.answer(name, second === undefined ? first : handover.and(first, second));
}

function placeOf(c: PaperCase, task: CommunityTask): string {
  const { handover } = c.said;
  const { crops, zone, place } = task.about;
  if (crops.length === 0) return handover.nothingPlanned;
  const where = zone === null ? [] : [handover.where(zone, place)];
  if (task.arrivals.length > 0)
    return [...where, ...(usable(task).length === 0 ? [handover.allWithheld] : [])].join(' ');
  const isSetAside = crops.some(({ seed, inoculant }) => seed.length + inoculant.length > 0);
  return [...where, ...(isSetAside ? [handover.notDelivered] : [])].join(' ');
}

function ChooseCommunity({ c }: { readonly c: PaperCase }) {
  const { communities } = c.scenario;
  const community = useView((view) => view.community);
  const chooseCommunity = useView((view) => view.chooseCommunity);
  const sorted = [...communities].sort((a, b) => a.name.localeCompare(b.name));
  return (
    <label className="choose-community">
      <span className="note">{c.said.handover.choose}</span>
      <select
        value={community ?? ''}
        onChange={({ target }) => {
          const chosen = communities.find(({ id }) => id === target.value);
          chooseCommunity(chosen?.id ?? null, chosen?.zoneId ?? null);
        }}
      >
        <option value="" />
        {sorted.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
