import { html, nothing, type TemplateResult } from 'lit';
import type { CommandUnion, ItemPart, PersonPart } from '../generated/wire.ts';
import { nextTimes, timeOn } from '../hands/clock.ts';
import { style, timeExample } from '../words/index.ts';
import { evidenceWords, isDone } from '../hands/items.ts';
import { faultWords, LEFT_OUT, personName, stateName } from '../hands/words.ts';
import type { Holding } from './main.ts';
import { cellWord, type Row } from './model.ts';

/** Times to choose from for "phoned, says 07:20". */
const TIMES = 6;

/** All that can be said of one item in holding: expected, wrong, left out, open again, witness. */
export function itemPanel(at: Holding, item: ItemPart): TemplateResult {
  const say = (label: string, command: CommandUnion) => {
    at.tell(`room ${item.room}: ${cellWord(item)} ${label}`, command, {
      about: [item.item],
      seen: item.revision,
    });
    at.close();
  };
  return html`<section
    class="panel"
    aria-label="room ${item.room}: ${item.name}"
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Escape') {
        at.close();
      }
    }}
  >
    <div class="head">
      <h2>Room ${item.room}: ${item.name}</h2>
      <button @click=${() => at.close()}>Close</button>
    </div>
    <p class="dim">${known(at, item)}</p>
    ${
      item.state === 'fault'
        ? html`<button
            data-first
            class="main"
            @click=${() => say('mended', { type: 'mend', item: item.item })}
          >
            That is settled<small>then it is looked at again</small>
          </button>`
        : isDone(item)
          ? html`<button
              data-first
              @click=${() => say('open again', { type: 'reopen', item: item.item })}
            >
              Open again
            </button>`
          : html`${answer(at, item)} ${expected(at, item, say)} ${wrong(item, say)}
            ${item.core ? nothing : leftOut(item, say)}`
    }
  </section>`;
}

/** All that a row asks for, to choose one of it. */
export function rowPanel(at: Holding, row: Row): TemplateResult {
  const items = [...row.cells, ...row.more].filter((i): i is ItemPart => i !== undefined);
  return html`<section
    class="panel"
    aria-label="room ${row.room.room}"
    @keydown=${(e: KeyboardEvent) => {
      if (e.key === 'Escape') {
        at.close();
      }
    }}
  >
    <div class="head">
      <h2>Room ${row.room.room}: expected, wrong, left out</h2>
      <button @click=${() => at.close()}>Close</button>
    </div>
    <div class="col">
      ${items.map(
        (item, i) =>
          html`<button ?data-first=${i === 0} @click=${() => at.open(item)}>
            ${item.name}<small>${known(at, item)}</small>
          </button>`,
      )}
    </div>
  </section>`;
}

function known(at: Holding, item: ItemPart): string {
  const bits = [stateName(item.state), evidenceWords(item), item.what ?? ''];
  if (item.state !== 'open') {
    bits.push(at.hhmm(item.since));
  }
  if (item.expectedAt !== undefined && !isDone(item)) {
    bits.push(`expected ${at.hhmm(item.expectedAt)}`);
  }
  if (item.gates) {
    bits.push(`needed before ${item.gates.replaceAll('-', ' ')}`);
  }
  return bits.filter((b) => b !== '').join(' · ');
}

/** What makes it good: a touch, a choice, or a touch seen by a second person. */
function answer(at: Holding, item: ItemPart): TemplateResult {
  const send = (command: CommandUnion, label: string) => {
    at.tell(`room ${item.room}: ${cellWord(item)}${label}`, command, {
      about: [item.item],
      seen: item.revision,
    });
    at.close();
  };
  if (item.asks.kind === 'choice') {
    return html`<div class="col">
      ${item.asks.choices.map(
        (word, i) =>
          html`<button
            ?data-first=${i === 0}
            class=${word.startsWith('!') ? 'soft' : ''}
            @click=${() =>
              send(
                { type: 'good', item: item.item, evidence: { kind: 'choice', word } },
                `: ${word.replace(/^!/, '')}`,
              )}
          >
            ${word.replace(/^!/, '')}
          </button>`,
      )}
    </div>`;
  }
  if (item.asks.witness) {
    const people = at
      .list('person')
      .filter((p) => p.arrivedAt !== undefined && p.leftAt === undefined)
      .filter((p) => item.who.includes(p.role) || p.role === 'holding');
    const first = people.find((p) => p.person === at.signer);
    const by = (p: PersonPart, of: PersonPart, second?: string) => {
      at.tell(
        `room ${item.room}: ${cellWord(item)} done by ${personName(of)}, seen by ${personName(p)}`,
        {
          type: 'good',
          item: item.item,
          evidence: { kind: 'touch' },
          by: of.person,
          witness: p.person,
        },
        { about: [item.item], seen: item.revision, ...(second === undefined ? {} : { second }) },
      );
      at.close();
    };
    return html`<h3>${first ? `Done by ${personName(first)}, seen by` : 'Done by'}</h3>
      <div class="col">
        ${people
          .filter((p) => p !== first)
          .map(
            (p, i) =>
              html`<button
                ?data-first=${i === 0}
                @click=${() => {
                  if (!first) {
                    at.sign(p);
                    return;
                  }
                  at.signedByTwo(p, 'good', (second) => by(p, first, second));
                }}
              >
                ${personName(p)}
              </button>`,
          )}
        ${
          people.length < 2
            ? html`<p class="dim">two people must have arrived who may do this</p>`
            : nothing
        }
      </div>`;
  }
  return html`<div class="two">
    <button
      data-first
      class="main"
      @click=${() => {
        at.good(item);
        at.close();
      }}
    >
      Good
    </button>
    ${
      item.marks || item.state === 'in-hand'
        ? nothing
        : html`<button @click=${() => send({ type: 'begin', item: item.item }, ' begun')}>
            Begun
          </button>`
    }
  </div>`;
}

type Say = (label: string, command: CommandUnion) => void;

function expected(at: Holding, item: ItemPart, say: Say): TemplateResult {
  const tell = (time: number) =>
    say(`expected ${at.hhmm(time)}`, { type: 'expect-item', item: item.item, at: time });
  return html`<h3>Expected at</h3>
    <div class="times">
      ${nextTimes(at.now, TIMES).map(
        (time) => html`<button @click=${() => tell(time)}>${at.hhmm(time)}</button>`,
      )}
    </div>
    <form
      class="free"
      @submit=${(e: SubmitEvent) => {
        e.preventDefault();
        const form = e.target as HTMLFormElement;
        const input = form.elements.namedItem('time') as HTMLInputElement;
        const time = timeOn(at.suite?.date ?? '', input.value, at.zone);
        if (time === undefined) {
          input.setCustomValidity(`a time of day, like ${timeExample()}`);
          input.reportValidity();
          return;
        }
        tell(time);
      }}
    >
      <input
        name="time"
        inputmode=${style().clock === 24 ? 'numeric' : 'text'}
        autocomplete="off"
        aria-label=${`another time, like ${timeExample()}`}
        placeholder=${timeExample()}
        @input=${(e: InputEvent) => (e.target as HTMLInputElement).setCustomValidity('')}
      />
      <button>Expected</button>
    </form>`;
}

function wrong(item: ItemPart, say: Say): TemplateResult {
  return html`<h3>Something is wrong</h3>
    <div class="times">
      ${faultWords(item.section).map(
        (what) =>
          html`<button
            class="soft"
            @click=${() => say(what, { type: 'fault', item: item.item, what })}
          >
            ${what}
          </button>`,
      )}
    </div>
    <form
      class="free"
      @submit=${(e: SubmitEvent) => {
        e.preventDefault();
        const form = e.target as HTMLFormElement;
        const what = (form.elements.namedItem('what') as HTMLInputElement).value.trim();
        if (what !== '') {
          say(what, { type: 'fault', item: item.item, what });
        }
      }}
    >
      <input
        name="what"
        maxlength="80"
        autocomplete="off"
        aria-label="what is wrong, no names"
        placeholder="what is wrong, no names"
      />
      <button>Say</button>
    </form>`;
}

function leftOut(item: ItemPart, say: Say): TemplateResult {
  return html`<h3>Left out, because</h3>
    <div class="times">
      ${LEFT_OUT.map(
        (reason) =>
          html`<button
            class="soft"
            @click=${() => say(`left out, ${reason}`, { type: 'leave-out', item: item.item, reason })}
          >
            ${reason}
          </button>`,
      )}
    </div>`;
}
