import { mkdir, mkdtemp, readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Board, startBoard } from './board.ts';

const SITES = join(import.meta.dirname, '../../ops/src/main/resources');
const SITE = join(SITES, 'plain/site.json');

/** After everybody of the site has come, long before the date changes. */
const HOUR = 13;

/** A zone in which it is afternoon now: a test at three at night finds its people at work. */
const ZONE = zoneAt(HOUR);

function zoneAt(hour: number): string {
  const off = ((hour - new Date().getUTCHours() + 36) % 24) - 12;
  // The zone database counts these westward.
  return off === 0 ? 'Etc/GMT' : `Etc/GMT${off > 0 ? '-' : '+'}${Math.abs(off)}`;
}

/** A time of day so many minutes from now, as the clocks of {@link emptyBoard}'s site show it. */
export function inMinutes(minutes: number): string {
  const at = Math.ceil((Date.now() + minutes * 60_000) / 300_000) * 300_000;
  return new Date(at).toLocaleTimeString('en-GB', {
    timeZone: ZONE,
    hour: '2-digit',
    minute: '2-digit',
  });
}

/**
 * A board without a morning, of the plain site where it is afternoon now; with the bedside figures
 * that the demo's pharmacist has released.
 *
 * @param args more of the command `run`
 * @param second what is different at a second suite of the same board, if there is to be one
 */
export async function emptyBoard(
  args: readonly string[] = [],
  second?: Readonly<Record<string, unknown>>,
): Promise<Board> {
  const folder = await mkdtemp(join(tmpdir(), 'sunup-browser-'));
  const site = (await json(SITE)) as { zone: string; bedside: unknown };
  site.zone = ZONE;
  site.bedside = ((await json(join(SITES, 'demo/site.json'))) as typeof site).bedside;
  await mkdir(join(folder, 'board'));
  if (second === undefined) {
    await writeFile(join(folder, 'board', 'site.json'), JSON.stringify(site));
    return startBoard(['--empty', ...args], folder);
  }
  const sites = join(folder, 'sites');
  await mkdir(sites);
  await writeFile(join(sites, '1.json'), JSON.stringify(site));
  await writeFile(join(sites, '2.json'), JSON.stringify({ ...site, ...second }));
  return startBoard(['--empty', '--site', sites, ...args], folder);
}

async function json(file: string): Promise<unknown> {
  return JSON.parse(await readFile(file, 'utf8'));
}
