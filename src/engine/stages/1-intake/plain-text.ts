/** Control characters of C0 and C1, and the marks that turn the direction of text (Unicode categories Cc and part of Cf). */
const CONTROL = /[\p{Cc}\u202a-\u202e\u2066-\u2069]+/gu;
const MARKUP = /<[A-Za-z!/?]/;
/** A cell that a spreadsheet would run. */
const FORMULA = /^[=+@-]/;

/** Text without control characters, trimmed; line breaks and tabs become one space. */
export function stripControls(text: string): string {
  return text
    .replace(/[\t\r\n]+/g, ' ')
    .replace(CONTROL, '')
    .trim();
}

/** Text that a browser or a spreadsheet could take for more than text. It stays as it is: whoever writes it out must quote it. */
export function looksActive(text: string): boolean {
  return MARKUP.test(text) || FORMULA.test(text);
}
