import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';

const ROOT = join(import.meta.dirname, '..', '..');
const START_MS = 60_000;
/** Lines of the board's own words kept for an error message. */
const WORDS_KEPT = 40;

/** A board of its own, on a free port of this machine. */
export interface Board {
  /** Without a path and without a slash at the end. */
  readonly address: string;
  readonly data: string;
  /** What it has printed so far, the last lines. */
  readonly said: readonly string[];
  /** Pulls the plug: the process is killed without warning; its data stays. */
  kill(): Promise<void>;
  /** Ends it and removes its data. */
  stop(): Promise<void>;
}

/**
 * Starts the real board from what `mvn package` has built.
 *
 * @param args of the command `run`, for example `--empty` or `--speed 60`; `--port` and `--data`
 *   are given here unless they are among them
 */
export async function startBoard(args: readonly string[] = [], data?: string): Promise<Board> {
  const lib = join(ROOT, 'ops/target/lib');
  if (!existsSync(lib)) throw new Error('There is no build to test. Run: mvn -B -ntp package');
  const folder = data ?? (await mkdtemp(join(tmpdir(), 'sunup-browser-')));
  const port = args.includes('--port') ? [] : ['--port', '0'];
  const child = spawn(
    'java',
    [
      `-Dsunup.home=${ROOT}`,
      '-cp',
      `${join(ROOT, 'ops/target/classes')}:${lib}/*`,
      'sunup.ops.Main',
      'run',
      '--cold',
      '--past',
      '0',
      ...port,
      '--data',
      folder,
      ...args,
    ],
    { stdio: ['ignore', 'pipe', 'pipe'] },
  );
  const said: string[] = [];
  const address = await readAddress(child, said);
  const gone = async (signal: NodeJS.Signals): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill(signal);
    await once(child, 'exit');
  };
  return {
    address,
    data: folder,
    said,
    kill: () => gone('SIGKILL'),
    stop: async () => {
      await gone('SIGTERM');
      await rm(folder, { recursive: true, force: true });
    },
  };
}

/** The address that the board prints when it is ready. */
async function readAddress(child: ChildProcess, words: string[]): Promise<string> {
  const keep = (line: string): void => void (words.push(line) > WORDS_KEPT && words.shift());
  createInterface(child.stderr!).on('line', keep);
  return new Promise((resolve, reject) => {
    const fail = (why: string): void => {
      child.kill('SIGKILL');
      reject(new Error(`the board ${why}:\n${words.join('\n')}`));
    };
    const timer = setTimeout(() => fail('did not start in time'), START_MS);
    child.once('exit', () => fail('ended'));
    createInterface(child.stdout!).on('line', (line) => {
      keep(line);
      const found = /^board (https?:\/\/\S+?)\/?$/.exec(line);
      if (!found) return;
      clearTimeout(timer);
      child.removeAllListeners('exit');
      resolve(found[1]!);
    });
  });
}
