export function makeDemoDistrict(emit: (name: string, text: string) => void): void;
