import { html, type TemplateResult } from 'lit';
import type { Difference, Skill, Trial, TrialsApart } from './api.ts';
import { skillWords, trialPanel } from './belief.ts';
import { how } from './defined.ts';
import {
  type Asked,
  disagreeWords,
  groupWords,
  inOrder,
  listed,
  type Named,
  signed,
  told,
} from './model.ts';
import { type Answers, MOMENTS } from './questions.ts';
import { type Cell, dataTable, filesOf } from './tables.ts';

/** What can be said of as many coming as was said. */
export type Calling = 'few' | 'hopeful' | 'gloomy' | 'right';

/** What can be said of the board beside a plain way. */
export type Guiding = 'few' | 'better' | 'worse' | 'unseen';

export function callingOf(off: Difference | undefined): Calling {
  if (off?.value === undefined || off.verdict === 'TOO_FEW') return 'few';
  if (off.verdict === 'NONE_SEEN') return 'right';
  return off.value > 0 ? 'hopeful' : 'gloomy';
}

export function guidingOf(skill: Pick<Skill, 'interval'> | undefined): Guiding {
  if (skill?.interval === undefined) return 'few';
  const { lower, upper } = skill.interval;
  return lower > 0 ? 'better' : upper < 0 ? 'worse' : 'unseen';
}

/** Of a group, of many: corrected for them. */
function groupGuiding(skill: Difference | undefined): Guiding {
  if (skill?.value === undefined || skill.verdict === 'TOO_FEW') return 'few';
  if (skill.verdict === 'NONE_SEEN') return 'unseen';
  return skill.value > 0 ? 'better' : 'worse';
}

const inHundred = (share: number): string => (100 * share).toFixed(0);

const moments = (trials: readonly Trial[]): string =>
  `${listed(trials.map((t) => String(t.minutesBefore)))} minutes before the target`;

/** Trials that have the same to say, in the order of the first of each. */
function alike(trials: readonly Trial[], of: (trial: Trial) => string): Map<string, Trial[]> {
  const groups = new Map<string, Trial[]>();
  for (const trial of trials) groups.set(of(trial), [...(groups.get(of(trial)) ?? []), trial]);
  return groups;
}

/** "65 in 100", or each of several moments; once if all are the same. */
function shares(of: readonly number[]): string {
  const words = of.map(inHundred);
  return new Set(words).size === 1 ? (words[0] ?? '') : listed(words);
}

function callingWords(calling: Calling, trials: readonly Trial[]): string {
  const large = trials.flatMap((t) => (t.all === undefined ? [] : [t.all.large]));
  const said = shares(large.map((l) => l.said));
  const came = shares(large.map((l) => l.came));
  const figures = `it said on time for ${said} in 100, and ${came} came`;
  switch (calling) {
    case 'few':
      return 'there are too few forecasts to say whether as many came on time as it said.';
    case 'hopeful':
      return `it was too hopeful: ${figures}.`;
    case 'gloomy':
      return `it was too gloomy: ${figures}.${actedWords(trials)}`;
    case 'right':
      return `as many came on time as it said, as far as can be seen: ${figures}.`;
  }
}

/** Who acts on a forecast makes it look gloomy. */
function actedWords(trials: readonly Trial[]): string {
  const acted = trials.reduce((sum, t) => sum + (t.deskActed?.n ?? 0), 0);
  return acted === 0
    ? ''
    : ` After ${acted} of these forecasts the desk acted, which alone makes a board look gloomy.`;
}

function guideWords(average: Guiding, done: Guiding): string {
  if (average === 'few' && done === 'few') return 'Too few to say which was the better guide.';
  const names = (which: Guiding): string[] => [
    ...(average === which ? ["the site's average"] : []),
    ...(done === which ? ['percent done'] : []),
  ];
  const [better, worse, unseen] = [names('better'), names('worse'), names('unseen')];
  const words = [
    better.length === 0 ? '' : `it was a better guide than ${better.join(' and than ')}`,
    worse.length === 0
      ? ''
      : `${worse.join(' and ')} ${worse.length === 1 ? 'was the better guide' : 'were better guides'}`,
    unseen.length === 0
      ? ''
      : `beside ${unseen.join(' and ')} it is not seen to be better or worse`,
  ]
    .filter((part) => part !== '')
    .join('; ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** For moments that are alike: whether as many came as it said, and which was the better guide. */
export function plainWords(trials: readonly Trial[]): string[] {
  const groups = alike(trials, (t) =>
    [
      callingOf(t.all?.large.off),
      guidingOf(t.all?.overAverage),
      guidingOf(t.all?.overPercentDone),
    ].join(' '),
  );
  return [...groups].map(([key, of]) => {
    const [calling, average, done] = key.split(' ') as [Calling, Guiding, Guiding];
    return `At ${moments(of)} ${callingWords(calling, of)} ${guideWords(average, done)}`;
  });
}

const CALLED: Record<Calling, string> = {
  few: 'too few to say',
  hopeful: 'too hopeful',
  gloomy: 'too gloomy',
  right: 'not seen to be off',
};

const GUIDED: Record<Guiding, string> = {
  few: 'too few beside the average',
  better: 'better than the average',
  worse: 'worse than the average',
  unseen: 'not seen to beat the average',
};

/** "+23 (15 to 30)", in points of a hundred. */
function offWords(off: Difference | undefined): string {
  if (off?.value === undefined || off.interval === undefined) return '';
  const { lower, upper } = off.interval;
  return `${signed(100 * off.value, 0)} (${signed(100 * lower, 0)} to ${signed(100 * upper, 0)})`;
}

const MOMENT_HEAD = [
  'minutes before',
  'forecasts',
  'said on time, in 100',
  'came on time, in 100',
  'said less came, 95 % interval',
  'in words',
  "against the site's average",
  'against percent done',
] as const;

function momentRows(trials: readonly Trial[]): Cell[][] {
  return trials.map(({ minutesBefore, forecasts, all }) =>
    all === undefined
      ? [minutesBefore, forecasts, ...Array<Cell>(3), CALLED.few, ...Array<Cell>(2)]
      : [
          minutesBefore,
          all.n,
          inHundred(all.large.said),
          inHundred(all.large.came),
          offWords(all.large.off),
          CALLED[callingOf(all.large.off)],
          skillWords(all.overAverage),
          skillWords(all.overPercentDone),
        ],
  );
}

const APART_HEAD = [
  'group',
  'minutes before',
  'forecasts',
  'mornings',
  'said on time, %',
  'came on time, %',
  'said less came, points',
  'from',
  'to',
  'p',
  'in words',
  'skill over its average, %',
  'skill from',
  'skill to',
  'p of skill',
  'skill in words',
] as const;

/** Each group at each moment, as the file has it. */
export function apartRows({ moments: at }: TrialsApart): Cell[][] {
  const cells = (d: Difference | undefined): Cell[] => [
    d?.value === undefined ? undefined : (100 * d.value).toFixed(1),
    d?.interval === undefined ? undefined : (100 * d.interval.lower).toFixed(1),
    d?.interval === undefined ? undefined : (100 * d.interval.upper).toFixed(1),
    d?.adjusted?.toFixed(4),
  ];
  return at.flatMap(({ minutesBefore, groups }) =>
    groups.map((g) => [
      groupWords(g.name),
      minutesBefore,
      g.forecasts,
      g.mornings,
      g.large === undefined ? undefined : (100 * g.large.said).toFixed(1),
      g.large === undefined ? undefined : (100 * g.large.came).toFixed(1),
      ...cells(g.large?.off),
      CALLED[callingOf(g.large?.off)],
      ...cells(g.overAverage),
      GUIDED[groupGuiding(g.overAverage)],
    ]),
  );
}

/** Each group with a cell a moment. */
export function apartPanel(apart: TrialsApart): TemplateResult {
  const names = [...new Set(apart.moments.flatMap((m) => m.groups.map((g) => g.name)))]
    .map((first) => ({ first }))
    .sort(inOrder);
  const title = `The board by ${apart.split.toLowerCase()}`;
  const cell = (name: string, m: TrialsApart['moments'][number]): string => {
    const group = m.groups.find((g) => g.name === name);
    const calling = callingOf(group?.large?.off);
    if (group?.large === undefined || calling === 'few') return CALLED.few;
    const { said, came, off } = group.large;
    return `said ${inHundred(said)}, came ${inHundred(came)}: ${CALLED[calling]} ${offWords(off)}; ${GUIDED[groupGuiding(group.overAverage)]}`;
  };
  const lookedAt = apart.moments.map(({ minutesBefore, groups }) =>
    groups.flatMap(({ name, large, overAverage }): Named[] => {
      const where = `${groupWords(name)} at ${minutesBefore}`;
      return [
        ...(large === undefined ? [] : [[`${where}, said less came`, large.off] as const]),
        ...(overAverage === undefined ? [] : [[`${where}, its average`, overAverage] as const]),
      ];
    }),
  );
  if (names.length === 0) {
    return html`<p class="withheld">No forecast of these starts was kept.</p>`;
  }
  return html`<p>
      Each beside its own share on time so far; chances are corrected for all of them together at
      each moment.
    </p>
    ${dataTable(
      title,
      [apart.split.toLowerCase(), ...apart.moments.map((m) => `${m.minutesBefore} minutes before`)],
      names.map(({ first }) => [groupWords(first), ...apart.moments.map((m) => cell(first, m))]),
    )}
    ${disagreeWords(
      lookedAt.flat(),
      `${Math.max(...lookedAt.map(told))} that are looked at together at each moment`,
    ).map((words) => html`<p class="disagree">${words}</p>`)}
    ${how('verdict')} ${filesOf(title, APART_HEAD, apartRows(apart))}`;
}

/** The plain verdict, what it rests on, and the trial of the moment that was chosen. */
export function believePart(asked: Asked, answers: Answers): TemplateResult | undefined {
  const trials = MOMENTS.flatMap((m) => answers[`trial${m}`] ?? []);
  const chosen = trials.find((t) => String(t.minutesBefore) === asked.before);
  if (chosen === undefined) return undefined;
  const some = trials.some((t) => t.all !== undefined);
  return html`${
    trials.length < MOMENTS.length || !some
      ? ''
      : html`<ul class="verdict">
            ${plainWords(trials).map((words) => html`<li>${words}</li>`)}
          </ul>
          ${how('verdict')}
          <div class="appendix">
            ${dataTable('The verdict by moment', MOMENT_HEAD, momentRows(trials))}
            ${filesOf('The verdict by moment', MOMENT_HEAD, momentRows(trials))}
          </div>`
  }
  ${trialPanel(chosen)}`;
}
