import { type FormEvent, useState } from 'react';
import type { Decision } from '../../../engine/index.ts';
import type { HandoverEntry } from '../../../presentation/records/handover-entry.ts';
import { paperWords } from '../../../presentation/wording/paper-words.ts';
import { useSeason, useWords } from '../../state/use-stores.ts';
import { ChoiceField, DateField, NumberField, number, said, TextField } from './fields.tsx';
import { ToldProblems } from './told-problems.tsx';
import type { OpenDay } from './use-day.ts';
import { useEnter } from './use-enter.ts';

const KINDS = ['handover', 'hold', 'cleared', 'away', 'closed', 'rain', 'reading'] as const;
type Kind = (typeof KINDS)[number];

/** What happened beside the planned visits: one form, its fields by what it was. */
export function OtherEvent({ day }: { readonly day: OpenDay }) {
  const { records } = paperWords(useWords());
  const [kind, setKind] = useState<Kind>('handover');
  const { problems, record } = useEnter(day);

  function submit(event: FormEvent<HTMLFormElement>): void {
    event.preventDefault();
    const target = event.currentTarget;
    const form = new FormData(target);
    const taken = kind === 'handover' ? record([readHandover(form, day)]) : record([], readEvent(kind, form, day));
    if (taken) target.reset();
  }

  return (
    <section className="other-event">
      <h2>{records.otherTitle}</h2>
      <div className="record-fields">
        <ChoiceKind kind={kind} onChoose={setKind} />
      </div>
      {kind === 'reading' ? (
        <ReadingFile />
      ) : (
        <form key={kind} className="record-fields" onSubmit={submit}>
          <Fields kind={kind} day={day} />
          <button type="submit" className="edged">
            {records.add}
          </button>
        </form>
      )}
      <ToldProblems problems={problems} />
    </section>
  );
}

function ChoiceKind({ kind, onChoose }: { readonly kind: Kind; readonly onChoose: (kind: Kind) => void }) {
  const { records } = paperWords(useWords());
  return (
    <select
      aria-label={records.kindLabel}
      value={kind}
      onChange={({ target }) => onChoose(KINDS.find((one) => one === target.value) ?? 'handover')}
    >
      {KINDS.map((one) => (
        <option key={one} value={one}>
          {records.other[one]}
        </option>
      ))}
    </select>
  );
}

function Fields({ kind, day: { scenario, today } }: { readonly kind: Kind; readonly day: OpenDay }) {
  const { records } = paperWords(useWords());
  const lots = scenario.lots.map(({ id }) => [id, id] as const);
  const vehicles = scenario.vehicles.map(({ id }) => [id, id] as const);
  const communities = scenario.communities
    .map(({ id, name }) => [id, name] as const)
    .sort((a, b) => (a[1] < b[1] ? -1 : 1));
  switch (kind) {
    case 'handover':
      return (
        <>
          <ChoiceField label={records.community} name="community" options={communities} />
          <DateField label={records.date} name="date" value={today} max={today} />
          <ChoiceField label={records.vehicle} name="vehicle" options={[['', records.noVehicle], ...vehicles]} />
          <ChoiceField label={records.lot} name="lot" options={lots} />
          <NumberField label={records.packs} name="packs" required />
          <NumberField label={records.returnedHead} name="back" value={0} />
          <NumberField label={records.kg} name="kg" step="any" />
          <NumberField label={records.box} name="box" step={0.1} min={-40} />
          <DateField label={records.sown} name="sown" max={today} />
          <NumberField label={records.growers} name="growers" />
          <NumberField label={records.women} name="women" />
          <TextField label={records.reason} name="reason" />
        </>
      );
    case 'hold':
      return (
        <>
          <ChoiceField label={records.lot} name="lot" options={lots} />
          <NumberField label={`${records.packs} (${records.wholeLot})`} name="packs" min={1} />
          <TextField label={records.because} name="because" required />
        </>
      );
    case 'cleared':
      return (
        <>
          <ChoiceField label={records.lot} name="lot" options={lots} />
          <TextField label={records.by} name="by" required />
          <TextField label={records.evidence} name="evidence" required />
        </>
      );
    case 'away':
      return (
        <>
          <ChoiceField label={records.vehicle} name="vehicle" options={vehicles} />
          <DateField label={records.from} name="from" value={today} />
          <DateField label={records.to} name="to" value={today} />
          <TextField label={records.because} name="because" />
        </>
      );
    case 'closed':
      return (
        <>
          <ChoiceField label={records.nearCommunity} name="community" options={communities} />
          <DateField label={records.from} name="from" value={today} />
          <DateField label={records.to} name="to" value={today} />
          <TextField label={records.because} name="because" />
        </>
      );
    default:
      return (
        <>
          <ChoiceField
            label={records.station}
            name="station"
            options={scenario.weather.map(({ id }) => [id, id] as const)}
          />
          <DateField label={records.date} name="date" value={today} max={today} />
          <NumberField label={records.mm} name="mm" step={0.1} required />
        </>
      );
  }
}

function readHandover(form: FormData, { today }: OpenDay): HandoverEntry {
  return {
    date: said(form, 'date') ?? today,
    communityId: said(form, 'community') ?? '',
    vehicleId: said(form, 'vehicle'),
    lotId: said(form, 'lot') ?? '',
    packs: number(form, 'packs') ?? 0,
    returnedPacks: number(form, 'back') ?? 0,
    kg: number(form, 'kg'),
    boxC: number(form, 'box'),
    sownOn: said(form, 'sown'),
    growers: number(form, 'growers'),
    growersWomen: number(form, 'women'),
    reason: said(form, 'reason'),
  };
}

function readEvent(kind: Kind, form: FormData, { plan, today }: OpenDay): Decision[] {
  const because = said(form, 'because');
  const why = because === null ? {} : { because };
  const lotId = said(form, 'lot') ?? '';
  const span = { from: said(form, 'from') ?? today, to: said(form, 'to') ?? today };
  switch (kind) {
    case 'hold': {
      const packs = number(form, 'packs');
      return [{ kind: 'hold', lotId, ...(packs === null ? {} : { packs }), ...why }];
    }
    case 'cleared':
      return [
        {
          kind: 'flag-cleared',
          lotId,
          evidence: said(form, 'evidence') ?? '',
          by: said(form, 'by') ?? '',
          on: today,
        },
      ];
    case 'away':
      return [{ kind: 'vehicle-away', vehicleId: said(form, 'vehicle') ?? '', ...span, ...why }];
    case 'closed': {
      const place = plan.places.communityPlace[plan.ids.communities.indexOf(said(form, 'community') ?? '')] ?? -1;
      const [lon, lat] = [plan.places.placeLon[place], plan.places.placeLat[place]];
      return lon === undefined || lat === undefined ? [] : [{ kind: 'road-closed', lon, lat, ...span, ...why }];
    }
    case 'rain':
      return [
        {
          kind: 'rain',
          stationId: said(form, 'station') ?? '',
          date: said(form, 'date') ?? today,
          mm: number(form, 'mm') ?? 0,
        },
      ];
    default:
      return [];
  }
}

/** A logger's own file, read with the others by its name and columns. */
function ReadingFile() {
  const { records } = paperWords(useWords());
  const replaceFiles = useSeason((season) => season.replaceFiles);
  const [added, setAdded] = useState<string | null>(null);
  return (
    <p>
      <label className="file-input edged">
        <input
          type="file"
          accept=".csv"
          onChange={({ target }) => {
            const file = target.files?.[0];
            target.value = '';
            if (!file) return;
            void file.arrayBuffer().then(async (bytes) => {
              await replaceFiles(new Map([[`readings/${file.name}`, new Uint8Array(bytes)]]));
              setAdded(file.name);
            });
          }}
        />
        {records.readingFile}
      </label>{' '}
      <span className="note" role="status">
        {added === null ? records.readingNote : records.readingAdded(added)}
      </span>
    </p>
  );
}
