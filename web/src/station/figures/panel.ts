import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { padKeys, typedKey } from '../../hands/pad.ts';
import { techniqueWords } from '../../hands/words.ts';
import { capital, worded } from '../../words/index.ts';
import type { Station } from '../main.ts';
import type { StationView } from '../model.ts';
import type { Answer, Card, Entry, Input, Line, Listed, Worked } from './api.ts';

/** Lines of a result that fit below each other at the smallest screen; more stand in two columns. */
const FEW = 4;

/** Bedside figures, over the whole of the station between its head and its foot. */
export function figuresPanel(at: Station, view: StationView): TemplateResult {
  const bench = at.figures.bench;
  const listed = bench.figure;
  const title = listed ? listed.card.title : 'Bedside figures';
  return html`<section class="figures" aria-label=${title}>
    <div class="head">
      <h2>${title}<small>${caseWords(view)}</small></h2>
      ${
        listed
          ? html`<button @click=${() => at.figures.choose(undefined)}>All figures</button>`
          : nothing
      }
      <button @click=${() => at.figures.close()}>Close</button>
    </div>
    ${
      bench.blanked
        ? html`<p class="blanked" role="status">
            Another case is in this room now: what was entered for the last one is gone.
          </p>`
        : nothing
    }
    ${listed ? page(at, listed) : list(at)}
  </section>`;
}

function caseWords(view: StationView): string {
  const { plan, next } = view;
  if (view.half === 'next' && next) {
    return `for the next case here: ${next.caseId}, ${techniqueWords(next)}`;
  }
  if (!plan) {
    return 'no case is in this room';
  }
  const what = plan.procedure ?? plan.service;
  return `for the case in this room: ${plan.caseId}${what ? `, ${what}` : ''}`;
}

function list(at: Station): TemplateResult {
  const all = at.figures.list;
  if (typeof all === 'string') {
    return html`<p class="wrong" role="alert">${all}</p>
      <button class="soft" @click=${() => at.figures.fetch()}>Try again</button>`;
  }
  if (!all) {
    return html`<p class="dim">asking the board …</p>`;
  }
  const on = all.filter((f) => f.off === undefined);
  const off = all.filter((f) => f.off !== undefined);
  const reasons = [...new Set(off.map((f) => f.off!))];
  return html`${known(at) ? nothing : needsBoard()}
    <div class="tiles">
      ${on.map(
        (f, i) =>
          html`<button ?data-first=${i === 0} @click=${() => at.figures.choose(f)}>
            ${f.card.title}
          </button>`,
      )}
    </div>
    ${reasons.map(
      (why) =>
        html`<p class="off">
          <b>${capital(why)}</b>:
          ${off
            .filter((f) => f.off === why)
            .map((f) => f.card.title)
            .join(' · ')}
        </p>`,
    )}
    <p class="dim">
      They check arithmetic and are no medical advice. What is entered belongs to the case in this
      room, is kept on no disk, and is gone with it.
    </p>`;
}

/** True while the board says who is in the room and what is released. */
function known(at: Station): boolean {
  return !at.live.state.stale && at.figures.bench.confirmed;
}

function needsBoard(): TemplateResult {
  return html`<p class="wrong" role="alert">
    Figures need the board, and it does not answer. Until it does: the printed tables, or the sum by
    hand with a second person.
  </p>`;
}

function page(at: Station, listed: Listed): TemplateResult {
  const card = listed.card;
  return html`<div class="figure">
    <div class="asked">
      <div class="inputs" role="group" aria-label="what it asks for">
        ${card.inputs.map((input) => tile(at, input))}
      </div>
      <button
        class="main"
        ?disabled=${at.figures.bench.asking || at.figures.bench.caseId === undefined || !known(at)}
        @click=${() => at.figures.work()}
      >
        ${at.figures.bench.asking ? 'Asking the board …' : 'Work it out'}
      </button>
      ${about(card, listed)}
    </div>
    <div class="given">${side(at)}</div>
  </div>`;
}

function tile(at: Station, input: Input): TemplateResult {
  const bench = at.figures.bench;
  const again = bench.again(input.name);
  const wrong = bench.wrong(input.name) !== '';
  const shown = words(input, bench.entry(input.name), again);
  return html`<button
    class=${classMap({ tile: true, wrong: wrong || again })}
    aria-pressed=${bench.active === input.name}
    @click=${() => {
      bench.choosing(input.name);
      at.requestUpdate();
    }}
  >
    <small>${input.label}${input.needed ? '' : ' (optional)'}</small>
    <b>${shown || ' '}</b>
  </button>`;
}

/** As entered; of a number that is asked again only the second entry, so that nobody copies. */
function words(input: Input, entry: Entry | undefined, again: boolean): string {
  if (again) {
    return entry?.again ? `again: ${entry.again}` : 'once more';
  }
  if (!entry) {
    return '';
  }
  if (input.kind === 'choice') {
    return worded(entry.text);
  }
  if (entry.unit === undefined) {
    return `${entry.text} unit?`;
  }
  return entry.unit === '1:' ? `1:${entry.text}` : `${entry.text} ${entry.unit}`;
}

function about(card: Card, listed: Listed): TemplateResult {
  return html`<dl class="about">
    <dt>Formula</dt>
    <dd>${card.formula}</dd>
    <dt>Range</dt>
    <dd>${card.range}</dd>
    <dt>Caution</dt>
    <dd>${card.caution}</dd>
    <dt>Source</dt>
    <dd>${card.source}</dd>
    <dt>Released</dt>
    <dd>
      ${listed.released ? `${listed.released.by}, ${listed.released.on}` : 'not released'}. Local
      policy goes first.
    </dd>
  </dl>`;
}

function side(at: Station): TemplateResult {
  const bench = at.figures.bench;
  if (bench.trouble !== '') {
    return html`<p class="wrong" role="alert">${bench.trouble}</p>
      ${entering(at)}`;
  }
  const answer = bench.answer;
  if (!known(at) && answer?.answer !== 'worked') {
    return html`${needsBoard()} ${entering(at)}`;
  }
  switch (answer?.answer) {
    case 'worked':
      return known(at) || !bench.ofPatient ? worked(at, answer) : hidden(at);
    case 'off':
      return html`<p class="wrong" role="alert">${capital(answer.why)}.</p>`;
    case 'refused':
    case 'asked-again':
      return html`${reasons(bench.card, answer)} ${entering(at)}`;
    default:
      return entering(at);
  }
}

function reasons(
  card: Card | undefined,
  answer: Extract<Answer, { answer: 'refused' | 'asked-again' }>,
): TemplateResult {
  const label = (name: string) => card?.inputs.find((i) => i.name === name)?.label;
  return html`<div class="reasons" role="alert">
    <b>${answer.answer === 'refused' ? 'Not worked out:' : 'Enter it a second time:'}</b>
    <ul>
      ${answer.reasons.map((r) => {
        const name = label(r.input);
        const named = name !== undefined && !r.message.startsWith(name);
        return html`<li>${named ? `${name}: ` : ''}${r.message}</li>`;
      })}
    </ul>
  </div>`;
}

/** Whether the same case is still in the room, and the figure still released, can't be known. */
function hidden(at: Station): TemplateResult {
  return html`${needsBoard()}
    <p class="second">
      What was worked out at ${at.hhmm(at.figures.bench.workedAt)} is not shown: it is for the case
      that was in this room then, and whether that is still so can't be known. It comes back with
      the board if nothing has changed.
    </p>`;
}

function worked(at: Station, answer: Worked): TemplateResult {
  const bench = at.figures.bench;
  const many = answer.lines.length > FEW;
  return html`<div class=${classMap({ worked: true, many })} role="status">
    ${answer.lines.map((one) => line(one, many))}
    ${
      answer.secondPerson
        ? html`<p class="second">A second person works it out too before it is used.</p>`
        : nothing
    }
    ${answer.cautions.map((c) => html`<p class="second">${capital(c)}.</p>`)}
    <p class="back"><b>Read back</b> ${answer.given.join(' · ')}</p>
    <p class="back"><b>Sum</b> ${answer.worked}</p>
    ${
      known(at)
        ? nothing
        : html`<p class="second">
            The board does not answer. Worked out at ${at.hhmm(bench.workedAt)}, as it was released
            then, from what is read back here and from nothing of the patient.
          </p>`
    }
  </div>`;
}

/** @param close where many lines stand, what is said in parentheses is smaller */
function line(one: Line, close: boolean): TemplateResult {
  switch (one.line) {
    case 'plain': {
      const [text, more] = close ? one.text.split(/(?= \()/) : [one.text];
      return html`<p class="line">
        <small>${one.label}</small
        ><b>${text}</b>${more ? html`<small>${more.trim()}</small>` : nothing}
      </p>`;
    }
    case 'sizes': {
      const beside = [one.smaller, one.larger].filter((s) => s !== undefined).join(' and ');
      return html`<p class="line">
        <small>${one.label}</small><b>${one.size}</b>${
          beside ? html`<small>have ready ${beside}</small>` : nothing
        }
      </p>`;
    }
    case 'dose':
      return html`<p class="line">
        <small>${one.label}</small><b>${one.mg} = ${one.ml}</b
        ><small>of ${one.concentration}</small>
      </p>`;
  }
}

function entering(at: Station): TemplateResult {
  const input = at.figures.bench.input;
  if (!input) {
    return html`<p class="dim">Touch what you want to enter or change.</p>`;
  }
  return input.kind === 'choice' ? choices(at, input) : pad(at, input);
}

function choices(at: Station, input: Input): TemplateResult {
  const chosen = at.figures.bench.entry(input.name)?.text;
  return html`<div class="choices" role="group" aria-label=${input.label}>
      ${input.choices.map(
        (word) =>
          html`<button
            aria-pressed=${chosen === word}
            @click=${() => {
              at.figures.bench.choose(word);
              at.requestUpdate();
            }}
          >
            ${worded(word)}
          </button>`,
      )}
    </div>
    ${leaveOut(at, input)}`;
}

function leaveOut(at: Station, input: Input): TemplateResult | typeof nothing {
  return input.needed || !at.figures.bench.entry(input.name)
    ? nothing
    : html`<button
        class="soft"
        @click=${() => {
          at.figures.bench.clear();
          at.requestUpdate();
        }}
      >
        Leave out
      </button>`;
}

function pad(at: Station, input: Input): TemplateResult {
  const bench = at.figures.bench;
  const again = bench.again(input.name);
  const entry = bench.entry(input.name);
  const typed = (again ? entry?.again : entry?.text) ?? '';
  const press = (key: string) => {
    bench.press(key);
    at.requestUpdate();
  };
  return html`<div
      class="fpad"
      @keydown=${(e: KeyboardEvent) => {
        const key = typedKey(e);
        if (key !== undefined) {
          e.preventDefault();
          press(key);
        }
      }}
    >
      <p class="shown" aria-live="polite">
        <span>${typed || ' '}</span><small>${again ? entry?.unit : `${input.label}`}</small>
      </p>
      ${padKeys(press)}
      ${
        again
          ? html`<p class="dim">then touch Work it out</p>
              <button
                class="soft"
                @click=${() => {
                  bench.clear();
                  at.requestUpdate();
                }}
              >
                The first was wrong: begin anew
              </button>`
          : html`<div class="units" role="group" aria-label="unit">
              ${input.units.map(
                (unit) =>
                  html`<button
                    aria-pressed=${entry?.unit === unit}
                    ?disabled=${typed === ''}
                    @click=${() => {
                      bench.unit(unit);
                      at.requestUpdate();
                    }}
                  >
                    ${unit === '1:' ? '1 : it' : unit}
                  </button>`,
              )}
            </div>`
      }
    </div>
    ${again ? nothing : leaveOut(at, input)}`;
}
