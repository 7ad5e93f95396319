/** What was asked for and then called off. */
export class Cancelled extends Error {}
