import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { messageLength, withoutMarks } from '../../../src/presentation/exports/message-length.ts';
import { deliveryMessages } from '../../../src/presentation/papers/delivery-messages.ts';
import { paperCase } from '../../../src/presentation/papers/paper-case.ts';
import { english } from '../../../src/presentation/wording/words.ts';
import { planFiles, readFolderFiles } from '../../plan-files.ts';

const { plan, scenario, decisions } = planFiles(
  readFolderFiles(fileURLToPath(new URL('../../../scenarios/demo-district/', import.meta.url))),
  200,
);
const caseOf = (contact: string | null) => paperCase(plan, { ...scenario, contact }, decisions.decisions, english);

describe('the length of a short message', () => {
  // 3GPP TS 23.038: 140 octets hold 160 places of 7 bits or 70 of 16; a part of several leaves 153 or 67.
  it('counts 160 places at once, 153 each in parts', () => {
    expect(messageLength('a'.repeat(160))).toEqual({ alphabet: 'seven-bit', units: 160, parts: 1 });
    expect(messageLength('a'.repeat(161)).parts).toBe(2);
    expect(messageLength('a'.repeat(306)).parts).toBe(2);
    expect(messageLength('a'.repeat(307)).parts).toBe(3);
  });

  it('counts two places for what stands in the table of extension, 16 bits for what stands in neither', () => {
    expect(messageLength('€[]').units).toBe(6);
    expect(messageLength('ŋ'.repeat(70))).toEqual({ alphabet: 'sixteen-bit', units: 70, parts: 1 });
    expect(messageLength('ŋ'.repeat(71)).parts).toBe(2);
    expect(messageLength('Ω é ñ ü à Ç').alphabet).toBe('seven-bit');
  });

  it('takes off marks that the alphabet lacks, and nothing else', () => {
    expect(withoutMarks('Mbalẽ, Čečevo, Ngũ, Málaga é')).toBe('Mbale, Cecevo, Ngu, Malaga é');
    expect(withoutMarks('Ŋala')).toBe('Ŋala');
  });
});

describe('a message for each visit of the demonstration district', () => {
  const messages = deliveryMessages(caseOf('+00 555 0100'));

  it('is one short message, with day, hour, packs and whom to call', () => {
    expect(messages.length).toBeGreaterThan(150);
    for (const { text } of messages) {
      expect(messageLength(text), text).toMatchObject({ alphabet: 'seven-bit', parts: 1 });
      expect(text).toMatch(/, \d\d:\d\d: \d.*(bag|pack)/);
      expect(text).toContain('Call +00 555 0100');
    }
  });

  it('tells of all packs that the plan brings, and of no others', () => {
    const told = messages
      .flatMap(({ text }) => [...text.matchAll(/(\d[\d ]*) (?:bags? of seed|packs? of inoculant)/g)])
      .reduce((sum, [, count]) => sum + Number((count ?? '').replace(/\D/g, '')), 0);
    const served = plan.delivery.stops.loads
      .flat()
      .flatMap((load) => plan.delivery.loads.packs[load] ?? [])
      .reduce((sum, packs) => sum + packs, 0);
    expect(told).toBe(served);
  });

  it('is written to those who are concerned alone, and leaves out a call that nobody answers', () => {
    const [first] = messages;
    const own = deliveryMessages(caseOf(null), new Set([first?.communityId ?? '']));
    expect(new Set(own.map(({ communityId }) => communityId))).toEqual(new Set([first?.communityId]));
    expect(own.every(({ text }) => !text.includes('Call'))).toBe(true);
  });

  it('shortens a long name rather than the hour or the packs', () => {
    const long = {
      ...scenario,
      contact: '+00 555 0100',
      handoverPoints: scenario.handoverPoints.map((point) => ({ ...point, name: 'Nurnabolo '.repeat(20).trim() })),
    };
    for (const { text } of deliveryMessages(paperCase(plan, long, decisions.decisions, english)).slice(0, 20)) {
      expect(messageLength(text).parts, text).toBe(1);
      expect(text).toMatch(/\d\d:\d\d: \d/);
    }
  });
});
