import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../look/index.ts';
import { entryOver, type SunupEntry } from '../look/index.ts';
import '../hands/sign-on.ts';
import { ask, type Choices, type Progress, saveRows, send, siteSays, type Taken } from './api.ts';
import { Live, suiteIn, troubleWords } from '../live/index.ts';
import { comparePanel, trialPanel } from './belief.ts';
import type { PastMorning } from '../wall/past.ts';
import './chart.ts';
import { learnedPanel } from './learned.ts';
import { choice, filterBar, keptPrice, type Price, priceForm } from './filters.ts';
import { type Asked, askedIn, filterWords, queryOf, searchOf } from './model.ts';
import {
  causesPanel,
  latenessPanel,
  minutesPanel,
  daysPanel,
  reasonsPanel,
  sharesPanel,
} from './panels.ts';
import { leftOut, summaryPanel } from './summary.ts';
import { appendixDefinitions, printedDefinitions } from './defined.ts';
import { causeWords, part } from './parts.ts';
import { type Answers, needsChange, questionsOf } from './questions.ts';
import { roomsPanel } from './rooms.ts';
import { follow, toldIn } from '../words/index.ts';
import { showPast } from './past.ts';
import { reviewStyle } from './style.ts';

/** Fields of a past morning, and of what was learned, that hold words of the board. */
const PAST: ReadonlySet<string> = new Set(['word', 'words']);
const LEARNED: ReadonlySet<string> = new Set(['name', 'what', 'why']);

/** How often a page that has nothing yet looks again. */
const FIRST_LOOK_MS = 3_000;
/** And one that has some, while more is made: looks at how far it is. */
const MEANWHILE_LOOKS = 20;

const SPLITS: readonly [string, string][] = [
  ['room', 'each room with the others'],
  ['service', 'each service with the others'],
  ['weekday', 'each weekday with the others'],
  ['technique', 'each technique with the others'],
  ['change', 'after the marked change with before'],
];

const GROUPINGS: readonly [string, string][] = [
  ['section', 'by section of the sheet'],
  ['kind', 'by kind of waiting'],
  ['item', 'by item'],
  ['reported', 'as reported'],
];

const BEFORE: readonly [string, string][] = ['60', '40', '20', '10'].map((m) => [
  m,
  `${m} minutes before`,
]);

/** Where the minutes went, and whether to believe the board. */
@customElement('sunup-review')
export class Review extends LitElement {
  static override styles = reviewStyle;

  @state() private asked: Asked = askedIn(location.search);
  @state() private choices: Choices | undefined;
  @state() private answers: Answers = {};
  @state() private trouble = '';
  @state() private progress: Progress | undefined;
  @state() private taken: Taken | undefined;
  /** Dates of the closed mornings, the newest first. */
  @state() private closed: readonly string[] = [];
  @state() private fetching = false;
  @state() private busy = false;
  @state() private price: Price = keptPrice();
  /** All of it is invented. */
  @state() private demo = false;
  private waiting = false;
  private asking = new AbortController();

  /** Where screens are paired, who this one is: of the morning nothing is shown here. */
  private readonly live = new Live({
    page: 'desk',
    screen: 'review',
    suite: suiteIn(location.search),
  });
  private entry: SunupEntry | undefined;
  /** As whom it was asked last: the sign-on, or nobody; nothing where screens are not paired. */
  private askedAs: string | undefined;

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('popstate', this.onBack);
    this.live.addEventListener('state', this.onState);
    this.entry = entryOver(this.live, 'desk');
    this.live.start();
    void this.begin();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('popstate', this.onBack);
    this.live.removeEventListener('state', this.onState);
    this.entry?.remove();
    this.live.stop();
    this.asking.abort();
  }

  private readonly onBack = (): void => {
    this.asked = askedIn(location.search);
    void this.askAll();
  };

  /** What was refused before the screen was known, or before somebody signed on, is asked anew. */
  private readonly onState = (): void => {
    const { paired, signed } = this.live.state.entry;
    const as = paired === undefined ? undefined : (signed?.session ?? 'nobody');
    if (as === this.askedAs) return;
    this.askedAs = as;
    this.requestUpdate();
    if (as !== undefined) void this.begin();
  };

  private async begin(): Promise<void> {
    this.trouble = '';
    try {
      const site = await siteSays();
      follow(site.style);
      this.demo = site.demo;
      this.choices = await ask<Choices>('choices');
      this.progress = await ask<Progress>('archive');
      this.closed = (await ask<{ dates: string[] }>('closed')).dates;
    } catch (error) {
      this.say(error);
      return;
    }
    await this.askAll();
    if (this.progress.working) await this.follow();
    void this.waitForFirst();
  }

  private say(error: unknown): void {
    if (error instanceof DOMException && error.name === 'AbortError') return;
    this.trouble = troubleWords(error);
  }

  private readonly choose = (change: Partial<Asked>): void => {
    this.asked = { ...this.asked, ...change };
    history.pushState(null, '', location.pathname + searchOf(this.asked, location.search));
    void this.askAll();
  };

  /** The two pages, or these and what else there is in tables. */
  private readonly printed = (appendix: boolean): void => {
    this.toggleAttribute('appendix', appendix);
    const done = (): void => {
      this.removeAttribute('appendix');
    };
    addEventListener('afterprint', done, { once: true });
    print();
  };

  /** Asks everything anew; a question that was overtaken is given up. */
  private async askAll(): Promise<void> {
    this.asking.abort();
    const asking = new AbortController();
    this.asking = asking;
    this.busy = true;
    this.trouble = '';
    if (needsChange(this.asked))
      this.answers = { ...this.answers, compared: { comparisons: [], unjudged: 0 } };
    this.answers = { ...this.answers, causesBefore: undefined, causesAfter: undefined };
    for (const [key, figure, query] of questionsOf(this.asked, this.price)) {
      try {
        const answer = await ask<unknown>(figure, query, asking.signal);
        if (asking.signal.aborted) return;
        this.answers = { ...this.answers, [key]: answer };
      } catch (error) {
        if (asking.signal.aborted) return;
        this.say(error);
      }
    }
    this.busy = false;
  }

  override render(): TemplateResult {
    const { choices, asked, answers } = this;
    if (choices === undefined) {
      return html`<main>
        <h1>Review</h1>
        <p class=${this.trouble === '' ? '' : 'trouble'} role="status">
          ${this.trouble === '' ? 'Asking the board …' : this.trouble}
        </p>
        <sunup-sign-on .live=${this.live}></sunup-sign-on>
      </main>`;
    }
    const a = answers;
    return html`<header>
        <h1>Review</h1>
        ${this.demo ? html`<b class="demo">demo: all of it is invented</b>` : nothing}
        <p>
          ${filterWords(asked)} · the archive holds ${choices.cases} first
          cases${choices.first === undefined ? '' : ` from ${choices.first} to ${choices.last ?? ''}`}
        </p>
        <sunup-sign-on class="noprint" .live=${this.live}></sunup-sign-on>
        <a class="noprint" href="/">all pages</a>
      </header>
      ${filterBar(asked, choices, this.choose, this.printed)}
      <main aria-busy=${this.busy} class=${this.busy && a.summary === undefined ? 'busy' : ''}>
        ${this.trouble === '' ? nothing : html`<p class="trouble" role="alert">${this.trouble}</p>`}
        ${
          choices.cases === 0
            ? html`<p>
                Nothing is kept yet. First cases are counted when their morning is closed; history
                can be brought at the end of this page.
              </p>`
            : nothing
        }
        ${part('On time', nothing, a.summary && summaryPanel(a.summary))}
        ${priceForm(this.price, (price) => {
          this.price = price;
          void this.askAll();
        })}
        ${part(
          'Is it getting better?',
          nothing,
          a.shares &&
            html`${sharesPanel(a.shares.chart, a.shares.rules)} ${leftOut(a.shares.unjudged)}`,
        )}
        ${part(
          'Minutes late per start',
          nothing,
          a.minutes && minutesPanel(a.minutes.chart, a.minutes.rules),
        )}
        ${part(
          'Where the minutes went',
          choice('put together', 'by', asked, GROUPINGS, this.choose),
          a.causes &&
            causesPanel(a.causes, causeWords, { before: a.causesBefore, after: a.causesAfter }),
          'second',
        )}
        ${a.reasons && reasonsPanel(a.reasons, causeWords)}
        ${part('How starts lie about their targets', nothing, a.lateness && latenessPanel(a.lateness))}
        ${part(
          'Whether to believe the board',
          choice('forecasts', 'before', asked, BEFORE, this.choose),
          a.trial && trialPanel(a.trial),
        )}
        ${printedDefinitions()}
        ${part(
          'Causes by weekday',
          nothing,
          a.days && daysPanel(a.days, causeWords),
          'appendix first',
        )}
        ${part('Rooms by weekday', nothing, a.rooms && roomsPanel(a.rooms), 'appendix')}
        ${part(
          'Compare honestly',
          choice('compare', 'split', asked, SPLITS, this.choose),
          a.compared &&
            (needsChange(asked)
              ? html`<p>Give the date of the marked change above.</p>`
              : html`${comparePanel(a.compared.comparisons)} ${leftOut(a.compared.unjudged)}`),
          'appendix',
        )}
        ${part(
          'What the last closing taught',
          nothing,
          a.learned && learnedPanel(toldIn(a.learned, LEARNED)),
          'appendix',
        )}
        ${appendixDefinitions()} ${this.again()} ${this.keeping()}
      </main>`;
  }

  /** A closed morning on the wall again. */
  private again(): TemplateResult {
    return html`<section class="noprint">
      <h2>A past morning on the wall</h2>
      ${
        this.closed.length === 0
          ? html`<p class="withheld">No morning is closed yet.</p>`
          : html`<form class="filters" @submit=${this.play}>
              <label>
                morning of
                <select name="date">
                  ${this.closed.map((date) => html`<option value=${date}>${date}</option>`)}
                </select>
              </label>
              <button type="submit" ?disabled=${this.fetching}>Play it</button>
              <span role="status">${this.fetching ? 'Reading the morning …' : ''}</span>
            </form>`
      }
    </section>`;
  }

  private readonly play = async (event: SubmitEvent): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    this.fetching = true;
    try {
      const query = new URLSearchParams({ date: String(form.get('date')) });
      const past = await ask<PastMorning>('past', query);
      showPast(toldIn(past, PAST), this, event.submitter);
    } catch (error) {
      this.say(error);
    }
    this.fetching = false;
  };

  private keeping(): TemplateResult {
    const progress = this.progress;
    return html`<section class="noprint">
      <h2>What this rests on</h2>
      <p role="status">
        ${
          progress === undefined
            ? ''
            : progress.working
              ? html`Making facts from the journal: ${progress.done} of ${progress.of} mornings.
                  <progress
                    max=${Math.max(1, progress.of)}
                    value=${progress.done}
                    aria-label="mornings"
                  ></progress>`
              : `Facts are in step with the journal${
                  progress.unreadable === 0
                    ? ''
                    : `, but for ${progress.unreadable} mornings that can't be read`
                }.`
        }
        ${progress?.trouble ?? ''}
      </p>
      <div class="filters">
        <button type="button" @click=${this.save}>Rows as CSV</button>
        <button type="button" @click=${this.remake}>Make the facts anew</button>
        <label>
          history before Sunup (CSV: date, room, booked, started)
          <input type="file" accept=".csv,text/csv" @change=${this.bring} />
        </label>
      </div>
      ${
        this.taken === undefined
          ? nothing
          : html`<p role="status">${this.taken.words}</p>
              <ul>
                ${this.taken.problems.map(
                  (p) => html`<li>line ${p.line}, ${p.field}: ${p.message}</li>`,
                )}
              </ul>`
      }
    </section>`;
  }

  private readonly save = async (): Promise<void> => {
    try {
      await saveRows(queryOf(this.asked));
    } catch (error) {
      this.say(error);
    }
  };

  private readonly remake = async (): Promise<void> => {
    try {
      this.progress = await send<Progress>('remake');
      await this.follow();
    } catch (error) {
      this.say(error);
    }
  };

  /** Looks how far the making is until it is done, then asks anew. */
  private async follow(): Promise<void> {
    for (let looks = 1; this.isConnected && this.progress?.working === true; looks++) {
      await new Promise((then) => setTimeout(then, 500));
      this.progress = await ask<Progress>('archive');
      // What is there already is shown meanwhile, now and then.
      if (looks % MEANWHILE_LOOKS === 0) {
        this.choices = await ask<Choices>('choices');
        await this.askAll();
      }
    }
    await this.begin();
  }

  /** A page that was opened before there was anything shows it once there is. */
  private async waitForFirst(): Promise<void> {
    if (this.waiting) return;
    this.waiting = true;
    try {
      while (this.isConnected && this.choices?.cases === 0) {
        await new Promise((then) => setTimeout(then, FIRST_LOOK_MS));
        if ((await ask<Choices>('choices')).cases > 0) await this.begin();
      }
    } catch (error) {
      this.say(error);
    }
    this.waiting = false;
  }

  private readonly bring = async (event: Event): Promise<void> => {
    const input = event.currentTarget as HTMLInputElement;
    const file = input.files?.[0];
    if (file === undefined) return;
    try {
      this.taken = await send<Taken>('history', await file.text());
      if (this.taken.rows > 0) await this.begin();
    } catch (error) {
      this.say(error);
    }
    input.value = '';
  };
}
