import { html, nothing, type TemplateResult } from 'lit';
import type { EvePart, EvidenceUnion, ItemPart } from '../generated/wire.ts';
import { onSubmit, textField } from '../hands/forms.ts';
import { evidenceWords } from '../hands/items.ts';
import type { Desk } from './main.ts';
import type { DeskRow } from './model.ts';

const KINDS: readonly [EvePart['kind'], string][] = [
  ['people', 'Nobody planned'],
  ['equipment', 'Equipment wanted by more rooms at once than there is'],
  ['supervisor', 'Supervisors wanted by more rooms at once'],
  ['options', 'Without options'],
];

const MISSING = 'eve/missing';

/** What is to be settled before tomorrow: all that is not good yet of what may be told today. */
export function eveOpen(eve: readonly EvePart[], items: readonly ItemPart[]): number {
  const wanted = eve.filter((e) => e.kind !== 'options').length;
  return wanted + eveItems(items).filter((i) => i.state !== 'good').length;
}

/** Items of which something may be told the day before and is open to be told, or was told. */
export function eveItems(items: readonly ItemPart[]): ItemPart[] {
  return items
    .filter((i) => i.eve === 'good' || (i.eve === 'fault' && i.state === 'fault'))
    .filter((i) => i.state !== 'left-out')
    .sort((a, b) => a.order - b.order);
}

/** Tomorrow's draft: what can still be mended today. */
export function evePanel(at: Desk, rows: DeskRow[]): TemplateResult {
  const eve = at.list('eve');
  const items = at.list('item');
  const cases = rows.filter((r) => r.plan && !r.plan.cancelled);
  return html`<h2>Evening look</h2>
    <p class="dim">
      What can be mended before the morning. Times are by usual minutes, if nobody had to wait. What
      is told here stays in the morning, with its time.
    </p>
    ${
      cases.length === 0
        ? html`<p class="dim">no first case yet: take a case list</p>`
        : KINDS.map(([kind, title]) => wanted(at, kind, title, eve))
    }
    ${
      cases.length === 0
        ? nothing
        : html`<h3>To ask and to tell</h3>
            ${missing(at, cases, items)}
            ${cases.map((r) =>
              room(
                at,
                r,
                eveItems(items).filter((i) => i.room === r.room.room),
              ),
            )}`
    }`;
}

function wanted(
  at: Desk,
  kind: EvePart['kind'],
  title: string,
  eve: readonly EvePart[],
): TemplateResult | typeof nothing {
  const here = eve.filter((e) => e.kind === kind);
  if (here.length === 0) return nothing;
  return html`<h3>${title}</h3>
    ${here.map(
      (e) =>
        html`<div class="card ${kind === 'options' ? '' : 'tight'}">
          <p>
            ${e.words}<small
              >${e.rooms.length === 1 ? 'room' : 'rooms'} ${e.rooms.join(', ')}</small
            >
          </p>
          ${
            kind === 'options'
              ? nothing
              : html`<div class="do">
                  ${e.rooms
                    .slice(0, 4)
                    .map(
                      (r) =>
                        html`<button
                          aria-label="Open ${r}: room ${r}, ${e.words}"
                          @click=${() => at.openRoom(r)}
                        >
                          Open ${r}
                        </button>`,
                    )}
                </div>`
          }
        </div>`,
    )}`;
}

function room(at: Desk, row: DeskRow, items: ItemPart[]): TemplateResult {
  const plan = row.plan!;
  const bad = items.some((i) => i.state === 'fault');
  return html`<div class="card ${bad ? 'ask' : ''}">
    <p>
      <b>${row.room.room}</b> ${plan.procedure ?? plan.service ?? 'first case'}
      <small>${at.hhmm(plan.bookedAt)} · ${[plan.technique, ...plan.options].join(' + ')}</small>
    </p>
    ${items.map((i) => line(at, row.room.room, i))}
  </div>`;
}

function line(at: Desk, inRoom: string, item: ItemPart): TemplateResult {
  const said = evidenceWords(item);
  if (item.state === 'good') {
    return html`<div class="line">
      <span class="mark good"></span>
      <span class="grow"
        >${item.name}<small>${said || 'good'}, told ${at.hhmm(item.since)}</small></span
      >
    </div>`;
  }
  if (item.state === 'fault') {
    const what = [item.what, said].filter((w) => w).join(', ') || 'something is wrong';
    return html`<div class="line">
      <span class="mark fault"></span>
      <span class="grow">${item.name}<small>${what}</small></span>
      <button
        aria-label="Mended: room ${inRoom}, ${item.name}"
        @click=${() =>
          at.tell(`room ${inRoom}: ${item.name} mended`, { type: 'mend', item: item.item })}
      >
        Mended
      </button>
    </div>`;
  }
  return html`<form
    @submit=${onSubmit((fields) => {
      const word = fields['word'];
      const evidence: EvidenceUnion =
        word === undefined ? { kind: 'touch' } : { kind: 'choice', word };
      at.tell(
        `room ${inRoom}: ${item.name}, ${word === undefined ? 'good' : word.replace(/^!/, '')}`,
        { type: 'good', item: item.item, evidence },
        { seen: item.revision },
      );
    })}
  >
    <div class="line">
      <span class="mark open"></span>
      <span class="grow">${item.name}</span>
      ${
        item.asks.kind === 'choice'
          ? html`<select name="word" aria-label="room ${inRoom}: ${item.name}">
              ${item.asks.choices.map(
                (w) => html`<option value=${w}>${w.replace(/^!/, '')}</option>`,
              )}
            </select>`
          : nothing
      }
      <button aria-label="Say: room ${inRoom}, ${item.name}">
        ${item.asks.kind === 'choice' ? 'Say' : 'Good'}
      </button>
    </div>
  </form>`;
}

/** Consent, papers and whatever else is looked at in the morning: what is missing is told now. */
function missing(at: Desk, cases: DeskRow[], items: readonly ItemPart[]): TemplateResult {
  if (at.form !== MISSING) {
    return html`<div class="do">
      <button aria-expanded="false" @click=${() => at.toggle(MISSING)}>
        Something is missing…
      </button>
    </div>`;
  }
  const can = items.filter((i) => i.eve !== undefined && i.state !== 'fault');
  const names = [...new Set(can.sort((a, b) => a.order - b.order).map((i) => i.name))];
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      const item = can.find((i) => i.room === fields['room'] && i.name === fields['item']);
      const what = fields['what'] ?? '';
      if (item) {
        at.tell(`room ${item.room}: ${item.name}${what && `, ${what}`}`, {
          type: 'fault',
          item: item.item,
          ...(what === '' ? {} : { what }),
        });
        at.done();
      }
    })}
  >
    <div class="do">
      <select name="room" aria-label="missing for room">
        ${cases.map((r) => html`<option value=${r.room.room}>room ${r.room.room}</option>`)}
      </select>
      <select name="item" aria-label="what is missing">
        ${names.map((n) => html`<option value=${n}>${n}</option>`)}
      </select>
    </div>
    ${textField('what', 'in words, no names')}
    <div class="do">
      <button class="main">Say</button>
      <button type="button" @click=${() => at.done()}>Close</button>
    </div>
  </form>`;
}
