import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarText, folded } from '../../src/presentation/exports/calendar-text.ts';

/** RFC 5545, Internet Calendaring and Scheduling (iCalendar), September 2009; the sections are named beside the checks. */
const octets = (text: string) => new TextEncoder().encode(text).length;
const unfolded = (text: string) => text.replaceAll('\r\n ', '');
const whole = {
  uid: 'a@example.org',
  from: '20260605',
  to: '20260606',
  isAllDay: true,
  summary: 's',
  description: '',
  place: '',
};

describe('content lines (section 3.1)', () => {
  it('80 ASCII octets are folded after 75, go on after one space, and unfold to what they were', () => {
    const line = `SUMMARY:${'x'.repeat(72)}`;
    expect(octets(line)).toBe(80);
    const [first = '', second = '', ...more] = folded(line).split('\r\n');
    expect(octets(first)).toBe(75);
    expect(second.startsWith(' ') && !second.startsWith('  ')).toBe(true);
    expect(more).toEqual([]);
    expect(unfolded(folded(line))).toBe(line);
  });

  it('of any text never exceed 75 octets, never part a character of UTF-8, and unfold to what they were', () => {
    for (const letter of ['x', 'é', '水', '🌱']) {
      for (let length = 0; length < 200; length += 7) {
        const line = `X:${'a'.repeat(length % 5)}${letter.repeat(length)}`;
        for (const part of folded(line).split('\r\n')) {
          expect(octets(part)).toBeLessThanOrEqual(75);
          expect(part).not.toMatch(/[\ud800-\udbff]$|^ ?[\udc00-\udfff]/);
        }
        expect(unfolded(folded(line))).toBe(line);
      }
    }
  });

  it('end in CRLF, the last one too', () => {
    const text = calendarText('name', '20260601T000000Z', [whole]);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });
});

describe('an event', () => {
  it('of the whole of 5 June 2026 begins 20260605 and ends 20260606 (section 3.6.1: DTEND is not part of it)', () => {
    const text = calendarText('name', '20260601T000000Z', [whole]);
    expect(text).toContain('\r\nDTSTART;VALUE=DATE:20260605\r\n');
    expect(text).toContain('\r\nDTEND;VALUE=DATE:20260606\r\n');
  });

  it('has one UID and one DTSTAMP in UTC; the calendar has PRODID and VERSION 2.0 (sections 3.6, 3.6.1)', () => {
    const component = new ICAL.Component(ICAL.parse(calendarText('name', '20260601T000000Z', [whole])));
    expect(component.getFirstPropertyValue('version')).toBe('2.0');
    expect(String(component.getFirstPropertyValue('prodid'))).not.toBe('');
    const [event] = component.getAllSubcomponents('vevent');
    expect(event?.getAllProperties('uid').length).toBe(1);
    expect(String(event?.getFirstPropertyValue('dtstamp'))).toBe('2026-06-01T00:00:00Z');
  });
});
