import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import '../look/index.ts';
import { entryOver, type SunupEntry } from '../look/index.ts';
import '../hands/sign-on.ts';
import { ask, type Choices, type Progress, saveRows, send, siteSays, type Taken } from './api.ts';
import { Live, NotDone, suiteIn, troubleWords } from '../live/index.ts';
import { apartPanel, believePart } from './board-verdict.ts';
import type { PastMorning } from '../wall/past.ts';
import { causesComparedPanel } from './causes-compared.ts';
import './chart.ts';
import { keepingPart } from './keeping.ts';
import { learnedPanel } from './learned.ts';
import {
  BEFORE,
  choice,
  EACH,
  filterBar,
  GROUPINGS,
  keptPrice,
  type Price,
  priceForm,
  SPLITS,
} from './filters.ts';
import { comparingPart } from './comparing.ts';
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
import { causeWords, part, type PartState, workingWords } from './parts.ts';
import { type Answers, questionsOf } from './questions.ts';
import { roomsPanel } from './rooms.ts';
import { follow, toldIn } from '../words/index.ts';
import { showPast } from './past.ts';
import { reviewStyle } from './style.ts';
import { workingStyle } from './style-working.ts';

/** Fields of a past morning, and of what was learned, that hold words of the board. */
const PAST: ReadonlySet<string> = new Set(['word', 'words']);
const LEARNED: ReadonlySet<string> = new Set(['name', 'what', 'why']);

/** How often a page that has nothing yet looks again. */
const FIRST_LOOK_MS = 3_000;
/** And one that has some, while more is made: looks at how far it is. */
const MEANWHILE_LOOKS = 20;

/** True if the board understood and says what to ask otherwise: that belongs to the part asked. */
const isOfTheQuestion = (error: unknown): boolean =>
  error instanceof NotDone && (error.status === 400 || error.status === 422);

/** Where the minutes went, and whether to believe the board. */
@customElement('sunup-review')
export class Review extends LitElement {
  static override styles = [reviewStyle, workingStyle];

  @state() private asked: Asked = askedIn(location.search);
  @state() private choices: Choices | undefined;
  @state() private answers: Answers = {};
  @state() private trouble = '';
  /** What the board can't answer as it was asked, by the part of the page. */
  @state() private failed: Partial<Record<keyof Answers, string>> = {};
  @state() private progress: Progress | undefined;
  /** Answers of an earlier choice that are still shown. */
  @state() private old: ReadonlySet<keyof Answers> = new Set();
  @state() private taken: Taken | undefined;
  /** Dates of the closed mornings, the newest first. */
  @state() private closed: readonly string[] = [];
  @state() private fetching = false;
  @state() private busy = true;
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
      this.busy = false;
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
    this.failed = {};
    const questions = questionsOf(this.asked, this.price);
    this.answers = Object.fromEntries(
      questions.map(([key]) => [key, this.answers[key]]),
    ) as Answers;
    this.old = new Set(questions.map(([key]) => key).filter((key) => this.answers[key]));
    for (const [key, figure, query] of questions) {
      try {
        const answer = await ask<unknown>(figure, query, asking.signal);
        if (asking.signal.aborted) return;
        this.settle(key, answer);
      } catch (error) {
        if (asking.signal.aborted) return;
        if (isOfTheQuestion(error)) {
          this.failed = { ...this.failed, [key]: troubleWords(error) };
          this.settle(key, undefined);
        } else this.say(error);
      }
    }
    this.busy = false;
  }

  /** What is shown of a part is of this choice from now on. */
  private settle(key: keyof Answers, answer: unknown): void {
    this.answers = { ...this.answers, [key]: answer };
    this.old = new Set([...this.old].filter((other) => other !== key));
  }

  /** How a part of the page stands, by the answers that it is made of. */
  private stateOf(kind: string, ...keys: (keyof Answers)[]): PartState {
    return {
      kind,
      old: keys.some((key) => this.old.has(key)),
      failed: keys.map((key) => this.failed[key]).find((words) => words !== undefined),
    };
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
      ${workingWords(this.busy, this.old.size, this.trouble !== '')}
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
        ${part(
          'On time',
          nothing,
          a.summary && summaryPanel(a.summary),
          this.stateOf('', 'summary'),
        )}
        ${priceForm(this.price, (price) => {
          this.price = price;
          void this.askAll();
        })}
        ${part(
          'Is it getting better?',
          nothing,
          a.shares &&
            html`${sharesPanel(a.shares.chart, a.shares.rules)} ${leftOut(a.shares.unjudged)}`,
          this.stateOf('', 'shares'),
        )}
        ${part(
          'Minutes late per start',
          nothing,
          a.minutes && minutesPanel(a.minutes.chart, a.minutes.rules),
          this.stateOf('', 'minutes'),
        )}
        ${part(
          'Where the minutes went',
          choice('put together', 'by', asked, GROUPINGS, this.choose),
          a.causes &&
            html`${causesPanel(a.causes, causeWords)}
              <div class="appendix">
                ${a.causesMoved && causesComparedPanel(a.causesMoved, causeWords)}
              </div>
              ${a.reasons && reasonsPanel(a.reasons, causeWords)}`,
          this.stateOf('second', 'causes', 'causesMoved', 'reasons'),
        )}
        ${part(
          'How starts lie about their targets',
          nothing,
          a.lateness && latenessPanel(a.lateness),
          this.stateOf('', 'lateness'),
        )}
        ${part(
          'Whether to believe the board',
          choice('forecasts', 'before', asked, BEFORE, this.choose),
          believePart(asked, a),
          this.stateOf('', 'trial60', 'trial40', 'trial20', 'trial10'),
        )}
        ${printedDefinitions()}
        ${part(
          'Causes by weekday',
          nothing,
          a.days && daysPanel(a.days, causeWords),
          this.stateOf('appendix first', 'days'),
        )}
        ${part(
          'Rooms by weekday',
          nothing,
          a.rooms && roomsPanel(a.rooms),
          this.stateOf('appendix', 'rooms'),
        )}
        ${part(
          'The board by room or service',
          choice('the board by', 'each', asked, EACH, this.choose),
          a.trialsApart && apartPanel(a.trialsApart),
          this.stateOf('appendix', 'trialsApart'),
        )}
        ${part(
          'Compare honestly',
          choice('compare', 'split', asked, SPLITS, this.choose),
          comparingPart(asked, answers, this.failed.compared, this.choose),
          this.stateOf('appendix', 'compared', 'causesCompared'),
        )}
        ${part(
          'What the last closing taught',
          nothing,
          a.learned && learnedPanel(toldIn(a.learned, LEARNED)),
          this.stateOf('appendix', 'learned'),
        )}
        ${appendixDefinitions()} ${this.again()} ${keepingPart(this.progress, this.taken, this)}
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

  readonly save = async (): Promise<void> => {
    try {
      await saveRows(queryOf(this.asked));
    } catch (error) {
      this.say(error);
    }
  };

  readonly remake = async (): Promise<void> => {
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

  readonly bring = async (event: Event): Promise<void> => {
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
