import { html, nothing, type TemplateResult } from 'lit';
import type { RoomPart } from '../generated/wire.ts';
import { boardWords, saidWords, sentWords } from '../hands/bands.ts';
import { minutesTo } from '../hands/clock.ts';
import { keyWords, lapsesSoon, short } from '../hands/items.ts';
import { moveWords, roomAnswers } from '../hands/moves.ts';
import { TAKE_BACK_MS } from '../hands/page.ts';
import { slowWords } from '../hands/readings.ts';
import { changeWord, lacksWords, toDealWith, wayWords, withTheCase } from '../hands/swapped.ts';
import { roleName } from '../hands/words.ts';
import { oldFigures } from '../look/index.ts';
import { goesOn } from './gone.ts';
import type { Station } from './main.ts';

import { openSections, type StationView } from './model.ts';
import { sheet } from './sheets.ts';

/** Cards that fit; the rest is counted. */
const CARDS = 4;

/** What the start waits for, taking back, help and ready; or the sheet that is open. */
export function right(at: Station, view: StationView, refused: unknown): TemplateResult {
  if (at.side.kind !== 'waits') {
    return html`${refused}${sheet(at, view, at.side)}`;
  }
  return html`${refused} ${waits(at, view)} ${undo(at)}
    <div class="help">
      <div class="two">
        <button @click=${() => at.show({ kind: 'help' })}>Send someone, not urgent</button>
        <button @click=${() => at.openFigures()}>Bedside figures</button>
      </div>
      <p>Emergency: use the wall button</p>
    </div>
    ${ready(at, view)}`;
}

/** In a room without a case: what is left of one that is gone, or the sheet that is open. */
export function leftOver(at: Station, view: StationView, refused: unknown): TemplateResult {
  return at.side.kind !== 'waits'
    ? right(at, view, refused)
    : html`${refused}
        <div class="waits">${swaps(at)}</div>
        ${
          at.drugs.anyLeft
            ? html`<button class="main" @click=${() => at.openDrugs()}>
                Drugs of a case that is not here any more<small>count out, throw away</small>
              </button>`
            : nothing
        }
        ${
          goesOn(at.list('case'), at.room, at.suite?.startEvent)
            ? html`<button class="main" @click=${() => at.show({ kind: 'next-list' })}>
                Set the next case up here<small>the first one was cancelled after its start</small>
              </button>`
            : nothing
        }`;
}

function waits(at: Station, view: StationView): TemplateResult {
  const own = view.stillGoing.map(
    (item) =>
      html`<div class="w ask">
        ${short(item.name)}: still going?<small>begun ${at.hhmm(item.since)}</small>
        <div class="two">
          <button @click=${() => at.touchGood(item)}>Done</button>
          <button
            @click=${() =>
              at.about(item, 'still going', {
                type: 'begin',
                item: item.item,
                ...(at.person ? { by: at.person } : {}),
              })}
          >
            Still going
          </button>
        </div>
      </div>`,
  );
  const help = at
    .list('need')
    .filter((n) => n.room === at.room && n.help)
    .map(() => html`<div class="w ask">Someone was asked for<small>nobody goes yet</small></div>`);
  const lapses = view.items
    .filter((i) => lapsesSoon(i, at.now))
    .sort((a, b) => a.lapsesAt! - b.lapsesAt!)
    .map(
      (i) =>
        html`<div class="w ask">
          ${keyWords(i)}: counts ${minutesTo(i.lapsesAt!, at.now)} min more<small
            >until ${at.hhmm(i.lapsesAt)}</small
          >
        </div>`,
    );
  const others = (view.wait?.waits ?? [])
    .filter((w) => !w.own)
    .map((w) => {
      const small = [
        w.takenBy ? `${roleName(w.takenBy)} is on it` : '',
        w.until === undefined ? '' : `until about ${at.hhmm(w.until)}`,
      ].filter((s) => s !== '');
      return html`<div class="w">${w.words}<small>${small.join(' · ')}</small></div>`;
    });
  const slow = at.readings.slow.map((s) => {
    const asked = at.said.list.find((one) => one.about.includes(s.item) && one.state !== 'refused');
    return html`<div class="w ask">
      ${short(s.name)} ${slowWords(s)}<small
        >more than chance; the check itself takes a little: look for a leak</small
      >
      <div class="two">
        <button ?disabled=${asked !== undefined} @click=${() => at.sendTechnician(s)}>
          ${asked ? 'Technician told' : 'Tell the technician'}
        </button>
      </div>
    </div>`;
  });
  const old = oldFigures(at.suite);
  const drugs = at.drugs
    .soon()
    .map(
      (line) =>
        html`<div class="w">
          ${line.drug.shown} drawn up<small>until ${at.hhmm(line.syringe?.lapsesAt)}</small>
        </div>`,
    );
  const started = view.room?.startedAt !== undefined;
  const counts = toCountOut(at, started);
  const cards = [
    ...swaps(at),
    ...moves(at),
    ...own,
    ...help,
    ...lapses,
    ...drugs,
    ...counts,
    ...slow,
    ...others,
  ];
  const head = started ? 'This room has started' : 'Your start also waits for';
  return html`<section class="waits" aria-label=${head} data-cards=${cards.length}>
    <h2>${head}</h2>
    ${old === '' ? nothing : html`<p class="old-figures">${old}</p>`} ${cards.slice(0, CARDS)}
    ${cards.length === 0 && !started ? html`<p class="dim">nothing else that the board knows of</p>` : nothing}
    <p class="dim more"></p>
  </section>`;
}

/** Cards that don't fit whole are counted instead: nobody reads half a sentence, or misses a whole one. */
export function fitCards(box: HTMLElement | null): void {
  const more = box?.querySelector('.more');
  if (!box || !more) return;
  const cards = [...box.querySelectorAll('.w')];
  cards.forEach((card) => card.classList.remove('over'));
  const count = (shown: number) => {
    const rest = Number(box.dataset['cards']) - shown;
    more.textContent = rest > 0 ? `and ${rest} more` : '';
  };
  count(cards.length);
  for (let shown = cards.length; shown > 0 && box.scrollHeight > box.clientHeight;) {
    cards[--shown]!.classList.add('over');
    count(shown);
  }
}

/** Controlled drugs that are not counted out: of a case that is gone, and of one that has begun. */
function toCountOut(at: Station, started: boolean): TemplateResult[] {
  const here = started ? (at.drugs.ofCase?.open ?? []) : [];
  const words = [...at.drugs.leftCounts.flatMap((d) => d.open), ...here];
  return words.length === 0
    ? []
    : [
        html`<div class="w ask">
          Controlled: ${words.join(' · ')}<small>two count it out before the room is left</small>
          <div class="two"><button @click=${() => at.openDrugs()}>Count</button></div>
        </div>`,
      ];
}

/** A case came or went, by a decision of the desk or the list: the room says that it knows and has put it right. */
function swaps(at: Station): TemplateResult[] {
  return at
    .list('swap')
    .filter((s) => s.room === at.room && s.confirmedAt === undefined)
    .map((s) => {
      const sent = at.said.pending('swap') !== undefined;
      const what = changeWord(s);
      const beside = [
        ...toDealWith(s.left, s.room, s.way).map(
          ({ words, things }) => `${words}: ${things.join(', ')}`,
        ),
        withTheCase(s),
        lacksWords(s),
      ].filter((words) => words !== '');
      return html`<div class="w ask">
        ${wayWords(s, at.hhmm(s.at))} ${beside.map((words) => html`<small>${words}</small>`)}
        <div class="two">
          <button
            ?disabled=${sent}
            @click=${() =>
              at.tell(
                `${what} confirmed, room ${s.with}`,
                { type: 'confirm-swap', room: at.room },
                { about: ['swap'], seen: s.revision },
              )}
          >
            ${sent ? 'Sent' : `${what === 'swap' ? 'Swap' : 'Move'} confirmed`}
          </button>
        </div>
      </div>`;
    });
}

/** What is asked of this room's people, or of the one who is signed on here. */
function moves(at: Station): TemplateResult[] {
  return at
    .list('move')
    .filter((m) => m.state === 'asked' || m.state === 'accepted')
    .filter((m) => m.room === at.room || (m.person !== undefined && m.person === at.person))
    .sort((a, b) => a.askedAt - b.askedAt)
    .map(
      (m) =>
        html`<div class="w ask move">
          ${m.words}<small>${moveWords(m, (t) => at.hhmm(t), at.now)}</small>
          <div class="two">
            ${roomAnswers(m).map(
              (a) =>
                html`<button
                  aria-label="${a.word}: ${m.words}"
                  @click=${() => at.tell(`${a.word.toLowerCase()}: ${m.words}`, a.command)}
                >
                  ${a.word}
                </button>`,
            )}
          </div>
        </div>`,
    );
}

function undo(at: Station): TemplateResult {
  const last = at.said.list.filter((s) => !s.undone).at(-1);
  const back = at.said.lastToUndo(at.now, TAKE_BACK_MS * at.live.rate);
  return html`<div class="undo" role="status">
    <span
      >${last ? html`${last.label} <span class="dim">· ${saidWords(last)}</span>` : nothing}</span
    >
    ${back ? html`<button @click=${() => at.takeBack(back)}>Take back</button>` : nothing}
  </div>`;
}

/** Nothing is reported ready once the room has started or its next case is shown: then the next case is prepared. */
function ready(at: Station, view: StationView): TemplateResult {
  const room = view.room;
  if (room?.startedAt !== undefined || view.half === 'next') {
    return nextReady(at, view);
  }
  const going = at.said.pending('ready');
  const said = room?.readyAt === undefined ? '' : readyWords(at, room);
  const open = view.open.length;
  return html`<div class="ready">
    <button class="main" ?disabled=${!room} @click=${() => at.reportReady()}>
      Report ready${open > 0 ? ` (${open} open)` : ''}
      <small>${going ? 'sent, not yet on the board' : said || openSections(view.open)}</small>
    </button>
  </div>`;
}

/** Where "ready" stood: to the next case's set-up, or what of it is open and to the one after. */
function nextReady(at: Station, view: StationView): TemplateResult {
  const { half, next, open } = view;
  if (next !== undefined && half !== 'next') {
    return html`<div class="ready">
      <button class="main" @click=${() => at.showHalf('next')}>
        Next case here: go on<small>set up since ${at.hhmm(next.at)}</small>
      </button>
    </div>`;
  }
  const words = next === undefined ? 'For the next case here' : 'For the case after this one';
  return html`<div class="ready">
    ${
      half === 'next'
        ? html`<p role="status">
            <b>${open.length === 0 ? 'Nothing open for the next case' : `${open.length} open`}</b>
            ${openSections(open)}
          </p>`
        : nothing
    }
    <button
      class=${half === 'next' ? 'soft' : 'main'}
      @click=${() => at.show({ kind: 'next-case' })}
    >
      ${words}<small>what is still good, what is done again</small>
    </button>
  </div>`;
}

/** "reported 07:12 by anaesthetist, nothing open": what was said, never more. */
function readyWords(at: Station, room: RoomPart): string {
  const by = room.readyBy ? ` by ${roleName(room.readyBy)}` : '';
  const open = room.readyOpen > 0 ? `${room.readyOpen} open` : 'nothing open';
  return `reported ${at.hhmm(room.readyAt)}${by}, ${open}`;
}

/** What is sent, and the board's clock. */
export function foot(at: Station): TemplateResult {
  const unsent = at.live.unsent;
  const words = sentWords(at);
  return html`<p class="foot">
    ${unsent > 0 ? html`<b>${words}</b>` : words} ·
    ${boardWords(at)}${at.suite?.demo ? ' · demo' : ''}
  </p>`;
}
