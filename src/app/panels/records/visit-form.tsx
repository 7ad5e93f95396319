import type { FormEvent } from 'react';
import type { Decision } from '../../../engine/index.ts';
import type { DayVisit } from '../../../presentation/records/day-visits.ts';
import type { HandoverEntry } from '../../../presentation/records/handover-entry.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useWords } from '../../state/use-stores.ts';
import { DateField, NumberField, number, said, TextField } from './fields.tsx';
import { ToldProblems } from './told-problems.tsx';
import type { OpenDay } from './use-day.ts';
import { useEnter } from './use-enter.ts';

/** A visit recorded as it was planned. */
export function asPlanned({ communityId, vehicleId, goods }: DayVisit, date: string): HandoverEntry[] {
  const nothing = { kg: null, boxC: null, sownOn: null, growers: null, growersWomen: null, reason: null };
  return goods.map(({ lotId, packs }) => ({
    ...nothing,
    date,
    communityId,
    vehicleId,
    lotId,
    packs,
    returnedPacks: 0,
  }));
}

/** One visit: how many packs of each lot, what came back and why, how warm the box was, and who took part. */
export function VisitForm({
  day,
  visit,
  onDone,
}: {
  readonly day: OpenDay;
  readonly visit: DayVisit;
  readonly onDone: () => void;
}) {
  const { records } = paperWords(useWords());
  const { problems, record } = useEnter(day);
  const hasLiving = visit.goods.some(({ kind }) => kind === 'inoculant');

  function submit(event: FormEvent<HTMLFormElement>): void {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const entries = asPlanned(visit, day.today).map((entry, i): HandoverEntry => {
      const returnedPacks = number(form, `back ${i}`) ?? 0;
      const isLiving = visit.goods[i]?.kind === 'inoculant';
      return {
        ...entry,
        packs: number(form, `packs ${i}`) ?? 0,
        returnedPacks,
        boxC: isLiving ? number(form, 'box') : null,
        sownOn: said(form, 'sown'),
        growers: number(form, 'growers'),
        growersWomen: number(form, 'women'),
        reason: returnedPacks > 0 ? said(form, 'reason') : null,
      };
    });
    const events = form.get('nothing more') === null ? [] : nothingMore(day, visit.communityId, said(form, 'reason'));
    if (record(entries, events)) onDone();
  }

  return (
    <form className="visit-form" onSubmit={submit}>
      <table className="ruled">
        <thead>
          <tr>
            <th scope="col">{records.lot}</th>
            <th scope="col" className="number">
              {records.planned}
            </th>
            <th scope="col" className="number">
              {records.handed}
            </th>
            <th scope="col" className="number">
              {records.returnedHead}
            </th>
          </tr>
        </thead>
        <tbody>
          {visit.goods.map(({ lotId, kind, packs }, i) => (
            <tr key={lotId}>
              <th scope="row">
                {lotId} <span className="soft">{records.goods[kind]}</span>
              </th>
              <td className="number">{packs}</td>
              <td className="number">
                <input
                  name={`packs ${i}`}
                  type="number"
                  min={0}
                  step={1}
                  defaultValue={packs}
                  required
                  aria-label={`${records.handed}, ${lotId}`}
                />
              </td>
              <td className="number">
                <input
                  name={`back ${i}`}
                  type="number"
                  min={0}
                  step={1}
                  defaultValue={0}
                  aria-label={`${records.returnedHead}, ${lotId}`}
                />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="record-fields">
        {hasLiving && <NumberField label={records.box} name="box" step={0.1} min={-40} />}
        <NumberField label={records.growers} name="growers" />
        <NumberField label={records.women} name="women" />
        <DateField label={records.sown} name="sown" max={day.today} />
        <TextField label={records.reason} name="reason" />
        <label className="record-check">
          <input type="checkbox" name="nothing more" /> {records.sownAlready}
        </label>
        <button type="submit" className="strong">
          {records.record}
        </button>
      </div>
      <ToldProblems problems={problems} />
    </form>
  );
}

/** A community that has sown needs nothing more this season: its cells are closed, each by a decision. */
function nothingMore({ scenario }: OpenDay, communityId: string, because: string | null): Decision[] {
  const planned = scenario.communities.find(({ id }) => id === communityId)?.crops ?? [];
  return planned
    .filter(({ plannedHa }) => plannedHa > 0)
    .flatMap(({ crop }) =>
      (['seed', 'inoculant'] as const).map((commodity) => ({
        kind: 'forbid' as const,
        communityId,
        crop,
        commodity,
        ...(because === null ? {} : { because }),
      })),
    );
}
