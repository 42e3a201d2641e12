/** How far away and how large the wall is; from its address: `/wall?inches=55&metres=6`. */
export interface WallSettings {
  readonly inches: number;
  readonly metres: number;
  readonly screen: string;
  /** What was wrong with the address, in words for who hangs the wall; empty if nothing. */
  readonly wrong: readonly string[];
}

const INCHES = { usual: 55, least: 10, most: 150 };
const METRES = { usual: 3, least: 0.5, most: 20 };

/** Reads the settings from an address's query. What cannot be read falls back to the usual. */
export function readSettings(query: string): WallSettings {
  const params = new URLSearchParams(query);
  const wrong: string[] = [];
  const number = (name: string, range: typeof INCHES): number => {
    const text = params.get(name);
    if (text === null) return range.usual;
    const value = Number(text);
    if (text.trim() !== '' && value >= range.least && value <= range.most) return value;
    wrong.push(`${name} must be from ${range.least} to ${range.most}, not “${text.slice(0, 12)}”`);
    return range.usual;
  };
  const inches = number('inches', INCHES);
  const metres = number('metres', METRES);
  return { inches, metres, screen: params.get('screen')?.slice(0, 40) || 'wall', wrong };
}

/**
 * The smallest letters, in pixels of a screen 1920 wide, that can be read from `metres`. A letter
 * of 1/200 of the distance at about 0.7 em capitals (common practice for signs).
 */
export function smallestLetters(settings: { inches: number; metres: number }): number {
  return (620 * settings.metres) / settings.inches;
}
