/** A minute of the day on the clock: 10:05. */
export function clockText(minute: number): string {
  const whole = Math.round(minute);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${two(Math.floor(whole / 60))}:${two(whole % 60)}`;
}
