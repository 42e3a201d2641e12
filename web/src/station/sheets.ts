import { html, nothing, type TemplateResult } from 'lit';
import type { ItemPart } from '../generated/wire.ts';
import { bandWords, isDone, outsideBand, rangeWords, readIn, wantsAnswer } from '../hands/items.ts';
import { padKeys, typedKey } from '../hands/pad.ts';
import { faultWords, LEFT_OUT, personName, roleName, SEND } from '../hands/words.ts';
import { figureBeside } from './figures/beside.ts';
import { frame } from './frame.ts';
import { paperSheet } from './from-paper.ts';
import { handOverSheet } from './hand-over.ts';
import type { Station } from './main.ts';
import type { Asking, Side } from './sides.ts';
import { peopleFor, type StationView, witnesses } from './model.ts';
import { nextCaseSheet, nextListSheet } from './next-case.ts';
import { withUnit } from '../words/index.ts';
import { plot } from './readings.ts';
import { itemSmall } from './rows.ts';
import { hereWords } from './top.ts';

/** What opens over the right-hand side. */
export function sheet(at: Station, view: StationView, side: Side): TemplateResult {
  switch (side.kind) {
    case 'who':
      return whoSheet(at);
    case 'help':
      return helpSheet(at);
    case 'next-case':
      return nextCaseSheet(at, view);
    case 'next-list':
      return nextListSheet(at);
    case 'item':
      return itemSheet(at, side.item);
    case 'ask':
      return askSheet(at, view, side);
    case 'hand-over':
      return handOverSheet(at, view, side);
    case 'paper':
      return paperSheet(at, side);
    default:
      return html``;
  }
}

function whoSheet(at: Station): TemplateResult {
  const people = peopleFor(at.list('person'), at.room);
  const me = people.find((p) => p.person === at.person);
  const others = people.filter((p) => p !== me);
  return frame(
    at,
    me ? `${personName(me)} is signed on` : 'Who is here?',
    html`${
        me
          ? html`<div class="grid">
              <button @click=${() => at.leave(me)}>I leave this room</button>
              <button @click=${() => at.signOff()}>Sign off only</button>
              <button @click=${() => at.show({ kind: 'paper', typed: '', wrong: '' })}>
                Enter from paper
              </button>
            </div>`
          : nothing
      }
      <div class="col people">
        ${others.map(
          (p, i) =>
            html`<div class="two">
              <button class="wide" ?data-first=${i === 0} @click=${() => at.sign(p)}>
                ${personName(p)}<small
                  >${hereWords(at, p)}${p.room && p.room !== at.room ? ` · now in ${p.room}` : ''}</small
                >
              </button>
              ${
                me && p.role === me.role
                  ? html`<button
                      @click=${() =>
                        at.show({
                          kind: 'hand-over',
                          from: me,
                          to: p,
                          again: new Set(),
                          gives: false,
                        })}
                    >
                      Hand over
                    </button>`
                  : nothing
              }
            </div>`,
        )}
      </div>
      ${others.length === 0 ? html`<p class="dim">nobody else is planned here</p>` : nothing}`,
  );
}

function helpSheet(at: Station): TemplateResult {
  return frame(
    at,
    'Send someone, not urgent',
    html`<p class="emergency">Emergency: use the wall button</p>
      <div class="col">
        ${SEND.map(
          (what, i) =>
            html`<button ?data-first=${i === 0} @click=${() => at.sendSomeone(what)}>
              ${what}
            </button>`,
        )}
      </div>
      ${free(at, 'something else', 'Send', (text) => at.sendSomeone(text))}`,
  );
}

function free(
  at: Station,
  label: string,
  button: string,
  use: (text: string) => void,
): TemplateResult {
  return html`<form
    class="free"
    @submit=${(e: SubmitEvent) => {
      e.preventDefault();
      const input = (e.target as HTMLFormElement).elements.namedItem('text') as HTMLInputElement;
      if (input.value.trim() !== '') {
        use(input.value.trim());
        at.requestUpdate();
      }
    }}
  >
    <input name="text" maxlength="80" autocomplete="off" aria-label=${label} placeholder=${label} />
    <button>${button}</button>
  </form>`;
}

function itemSheet(at: Station, ref: string): TemplateResult {
  const item = at.item(ref);
  if (!item) {
    return frame(at, 'This is not asked for any more', nothing);
  }
  return frame(
    at,
    item.name,
    html`<p class="dim">
        ${itemSmall(at, item)}${
          item.gates ? html`<br />needed before ${item.gates.replaceAll('-', ' ')}` : nothing
        }${item.who.length > 0 ? html`<br />${item.who.map(roleName).join(' or ')}` : nothing}
      </p>
      ${plot(at.readings.of(item))} ${beside(at, item)}
      ${item.state === 'fault' ? faultActions(at, item) : doneOrOpen(at, item)}`,
  );
}

/** A sum that belongs to the item, one touch away. */
function beside(at: Station, item: ItemPart): TemplateResult | typeof nothing {
  const one = figureBeside(item.item);
  return one === undefined
    ? nothing
    : html`<div class="col">
        <button class="soft" @click=${() => at.openFigures(one.figure)}>
          Figure: ${one.words}
        </button>
      </div>`;
}

function doneOrOpen(at: Station, item: ItemPart): TemplateResult {
  if (isDone(item)) {
    return html`<div class="col">
        <button
          data-first
          @click=${() => at.about(item, 'open again', { type: 'reopen', item: item.item })}
        >
          Open again<small>it is not good any more</small>
        </button>
      </div>
      ${faultChoices(at, item)}`;
  }
  return html`<div class="grid">
      <button
        data-first
        ?disabled=${item.state === 'in-hand'}
        @click=${() => at.about(item, 'begun', begin(at, item))}
      >
        Begin
      </button>
      <button
        class="main"
        @click=${() => (wantsAnswer(item) ? at.ask([item]) : at.touchGood(item))}
      >
        ${wantsAnswer(item) ? 'Enter' : 'Good'}
      </button>
    </div>
    ${faultChoices(at, item)}
    ${
      item.core
        ? html`<p class="dim">belongs to the site's core: may not be left out</p>`
        : html`<h2>Left out, because</h2>
            <div class="col">
              ${LEFT_OUT.map(
                (reason) =>
                  html`<button
                    @click=${() =>
                      at.about(item, `left out, ${reason}`, {
                        type: 'leave-out',
                        item: item.item,
                        reason,
                      })}
                  >
                    ${reason}
                  </button>`,
              )}
            </div>`
    }`;
}

function begin(at: Station, item: ItemPart) {
  return { type: 'begin', item: item.item, ...(at.person ? { by: at.person } : {}) } as const;
}

function faultChoices(at: Station, item: ItemPart): TemplateResult {
  const say = (what: string) => at.about(item, what, { type: 'fault', item: item.item, what });
  return html`<h2>Something is wrong</h2>
    <div class="grid">
      ${faultWords(item.section).map(
        (what) => html`<button class="soft" @click=${() => say(what)}>${what}</button>`,
      )}
    </div>
    ${free(at, 'what is wrong', 'Say', say)}`;
}

function faultActions(at: Station, item: ItemPart): TemplateResult {
  return html`<div class="col">
    <button
      class="main"
      data-first
      @click=${() => at.about(item, 'mended', { type: 'mend', item: item.item })}
    >
      Mended<small>then it is looked at again</small>
    </button>
    ${
      item.mender
        ? html`<p class="dim">someone is on it</p>`
        : html`<button
              @click=${() =>
                at.about(item, 'I mend it', {
                  type: 'take-fault',
                  item: item.item,
                  ...(at.person ? { by: at.person } : {}),
                })}
            >
              I mend it
            </button>
            <button
              @click=${() => at.sendSomeone(`technician: ${item.what ?? item.name}`.slice(0, 80))}
            >
              Send a technician, not urgent
            </button>`
    }
  </div>`;
}

function askSheet(at: Station, view: StationView, asking: Asking): TemplateResult {
  const item = view.items.find((i) => i.item === asking.queue[0]);
  if (!item) {
    return frame(at, 'This is not asked for any more', nothing);
  }
  const more = asking.queue.length - 1;
  const title = item.name;
  const body = asking.given
    ? witness(at, asking, item)
    : item.asks.kind === 'number'
      ? keypad(at, asking, item)
      : item.asks.kind === 'choice'
        ? choices(at, asking, item)
        : item.asks.kind === 'scan'
          ? units(at, asking, item)
          : witness(at, asking, item);
  return frame(
    at,
    title,
    html`${body}
    ${
      asking.then
        ? html`<button class="soft" @click=${() => at.skip(asking)}>
            Not now${more > 0 ? ` (${more} more to ask)` : ''}
          </button>`
        : nothing
    }`,
  );
}

function keypad(at: Station, asking: Asking, item: ItemPart): TemplateResult {
  const unit = readIn(item);
  const typed = asking.typed;
  const outside = typed !== '' && outsideBand(item, Number(typed));
  return html`<div
    class="pad"
    @keydown=${(e: KeyboardEvent) => {
      const key = typedKey(e);
      if (key !== undefined) {
        e.preventDefault();
        at.press(asking, key);
      } else if (e.key === 'Enter' && typed !== '') {
        e.preventDefault();
        at.enter(asking, item);
      }
    }}
  >
    <p class="shown" aria-live="polite"><span>${typed || ' '}</span><small>${unit}</small></p>
    <p class="dim range">
      reads ${rangeWords(item)}${bandWords(item) ? ` · ${bandWords(item)}` : ''}
    </p>
    ${padKeys((key) => at.press(asking, key), { first: '7' })}
    ${asking.wrong ? html`<p class="wrong" role="alert">${asking.wrong}</p>` : nothing}
    ${outside ? html`<p class="wrong">outside what is good: this goes in as a fault</p>` : nothing}
    <button class="main" @click=${() => at.enter(asking, item)}>
      ${typed ? withUnit(Number(typed), unit) : 'Enter'}${item.asks.undo ? `, ${item.asks.undo}` : ''}
    </button>
  </div>`;
}

function choices(at: Station, asking: Asking, item: ItemPart): TemplateResult {
  return html`<div class="col">
    ${item.asks.choices.map((word, i) => {
      const fault = word.startsWith('!');
      return html`<button
        class=${fault ? 'soft' : ''}
        ?data-first=${i === 0}
        @click=${() => at.give(asking, item, { kind: 'choice', word }, fault)}
      >
        ${word.replace(/^!/, '')}${fault ? html`<small>goes in as a fault</small>` : nothing}
      </button>`;
    })}
  </div>`;
}

function units(at: Station, asking: Asking, item: ItemPart): TemplateResult {
  const list = [...at.list('unit')].sort(
    (a, b) => Number(b.with === at.room) - Number(a.with === at.room) || (a.key < b.key ? -1 : 1),
  );
  return html`<p class="dim">which one is here?</p>
    <div class="col">
      ${list.map(
        (unit, i) =>
          html`<button
            ?data-first=${i === 0}
            @click=${() => at.give(asking, item, { kind: 'scan', unit: unit.unit })}
          >
            ${unit.label}<small
              >${unit.with ? `with room ${unit.with}` : 'free'}${
                unit.promised ? ` · next to room ${unit.promised}` : ''
              }</small
            >
          </button>`,
      )}
    </div>`;
}

function witness(at: Station, asking: Asking, item: ItemPart): TemplateResult {
  return html`<p class="dim">second person who saw it</p>
    <div class="col">
      ${witnesses(at.list('person'), at.room, at.person).map(
        (p, i) =>
          html`<button
            ?data-first=${i === 0}
            @click=${() => at.sendGood(asking, item, asking.given ?? { kind: 'touch' }, p)}
          >
            ${personName(p)}
          </button>`,
      )}
    </div>`;
}
