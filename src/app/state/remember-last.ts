/** Keeps the last answer of a pure function, and gives the same object while its arguments are the same objects. */
export function rememberLast<Values extends readonly unknown[], Answer>(
  work: (...values: Values) => Answer,
): (...values: Values) => Answer {
  let last: { readonly values: Values; readonly answer: Answer } | null = null;
  return (...values) => {
    const held = last;
    if (held?.values.every((value, i) => Object.is(value, values[i]))) return held.answer;
    last = { values, answer: work(...values) };
    return last.answer;
  };
}
