import { localNumber } from '../../../presentation/local-number.ts';
import type { HandoverGoods } from '../../../presentation/papers/handover-goods.ts';
import type { HandoverWords } from '../../../presentation/wording/handover-words.ts';
import { useSeason, useView } from '../../state/use-stores.ts';
import { PaperLink } from '../paper-link.tsx';
import { useHandover, useHandoverWords } from './use-handover.ts';

/** Who gets what, in one sentence; and whose handover is shown. */
export default function HandoverAnswer() {
  const words = useHandoverWords();
  const shown = useHandover();
  return (
    <>
      <h1>{shown === null ? words.handover.chooseTitle : answerOf(shown, words)}</h1>
      <p>{shown === null ? words.handover.chooseWhy : placeOf(shown, words)}</p>
      <ChooseCommunity />
      {shown !== null && shown.visits.length > 0 && (
        <p>
          <PaperLink paper="handover">{words.papers.sheet}</PaperLink>
        </p>
      )}
    </>
  );
}

function answerOf({ community, crops }: HandoverGoods, words: HandoverWords): string {
  const { handover } = words;
  const count = (kind: 'seed' | 'inoculant') =>
    crops.reduce((sum, crop) => sum + crop[kind].reduce((packs, one) => packs + one.packs, 0), 0);
  const [packs, bags] = [count('inoculant'), count('seed')];
  const told = [
    ...(packs > 0 ? [handover.packs(localNumber(packs, words), packs === 1)] : []),
    ...(bags > 0 ? [handover.bags(localNumber(bags, words), bags === 1)] : []),
  ];
  const [first, second] = told;
  if (first === undefined) return handover.nothing(community.name);
  return handover.answer(community.name, second === undefined ? first : handover.and(first, second));
}

function placeOf({ crops, visits, zone, place }: HandoverGoods, words: HandoverWords): string {
  const { handover } = words;
  if (crops.length === 0) return handover.nothingPlanned;
  const where = zone === null ? '' : handover.where(zone, place);
  return visits.length === 0 ? `${where} ${handover.notDelivered}` : where;
}

function ChooseCommunity() {
  const words = useHandoverWords();
  const scenario = useSeason((season) => season.scenario);
  const community = useView((view) => view.community);
  const chooseCommunity = useView((view) => view.chooseCommunity);
  if (scenario === null) return null;
  const sorted = [...scenario.communities].sort((a, b) => a.name.localeCompare(b.name));
  return (
    <label className="choose-community">
      <span className="note">{words.handover.choose}</span>
      <select
        value={community ?? ''}
        onChange={({ target }) => {
          const chosen = scenario.communities.find(({ id }) => id === target.value);
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
