export const LAUNCH_ARGUMENTS: string[];
export function findChromium(): Promise<string | null>;
export function provideChromium(say: (line: string) => void): Promise<string | null>;
