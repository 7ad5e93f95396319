const SLACK_LITRES = 1e-6;

/** Inoculant on a vehicle with a box rides in it, litres net of ice. Without a box it rides in cartons, limited by payload alone. */
export function fitsColdBox(litres: number, coolLitres: number): boolean {
  return coolLitres <= 0 || litres <= coolLitres + SLACK_LITRES;
}
