import { html, nothing, type TemplateResult } from 'lit';
import type {
  CasePart,
  ChancePart,
  DelayReason,
  ItemPart,
  RoomPart,
  RoomUse,
} from '../generated/wire.ts';
import { onSubmit, textField, timeField, timeIn } from '../hands/forms.ts';
import { keyWords, nextStep, reachedAt } from '../hands/items.ts';
import {
  REASONS,
  reasonName,
  roleName,
  stateName,
  stepName,
  STEPS,
  useName,
  USES_IN_ORDER,
} from '../hands/words.ts';
import { swapForm, swapped } from './swap.ts';
import type { Desk } from './main.ts';
import { openWords } from './rooms.ts';
import { type DeskRow, late, openItems, owesReason, percent } from './model.ts';
import { takeForm } from './needs.ts';

/** Items of a room that are listed; the rest is counted. */
const OPEN_SHOWN = 8;

/** One room: why it stands as it does, and what the desk can arrange for it. */
export function roomPanel(at: Desk, rows: DeskRow[]): TemplateResult {
  const row = rows.find((r) => r.room.room === at.room);
  if (!row) {
    return html`<p class="dim">this morning has no such room</p>`;
  }
  const { room, plan } = row;
  return html`<h2>Room ${room.room}</h2>
    ${lines(at, row)} ${holdups(at, row)}
    <div class="cards">
      ${useForm(at, room)} ${swapped(at, room.room)}
      ${plan && !plan.cancelled ? caseForms(at, row, plan) : nothing}
      ${plan?.cancelled ? html`<p class="card">the case is cancelled</p>` : nothing}
      ${noteForm(at, room)}
    </div>
    ${open(at, room)}`;
}

function lines(at: Desk, { room, plan, chance }: DeskRow): TemplateResult {
  const ready =
    room.readyAt === undefined
      ? 'not reported ready'
      : `reported ready ${at.hhmm(room.readyAt)}${room.readyBy ? ` by ${roleName(room.readyBy)}` : ''} with ${room.readyOpen === 0 ? 'nothing' : room.readyOpen} open, now ${openWords(at, room)}`;
  const word =
    room.lastWordAt === undefined ? 'no word yet' : `last word ${at.hhmm(room.lastWordAt)}`;
  return html`<p>
    ${
      plan
        ? html`${plan.procedure ?? plan.service ?? 'first case'} ·
            ${[plan.technique, ...plan.options].join(' + ')}<br />`
        : html`no first case<br />`
    }
    <span class="dim">${ready} · ${word}</span>
    ${
      chance && room.startedAt === undefined
        ? html`<br /><span class="dim">${chanceWords(at, chance)}</span>`
        : nothing
    }
  </p>`;
}

/** The chance, the range and what stands behind them; nothing of what is not known. */
function chanceWords(at: Desk, chance: ChancePart): string {
  if (chance.onTime === undefined) {
    return 'on time, start and lateness not known: no word';
  }
  const start = (time: number | undefined) => at.hhmm(time) || 'later';
  const range =
    chance.moreThanHours !== undefined
      ? `over ${chance.moreThanHours} h late`
      : `start ${start(chance.start10)} / ${start(chance.start50)} / ${start(chance.start90)} (10/50/90 %)`;
  const mean = late(chance) && ` · ${late(chance)} on average`;
  const lost = chance.alreadyLost > 0 ? `, ${percent(chance.alreadyLost)} of it already lost` : '';
  const capped = chance.capped > 0 ? `, ${chance.capped} of them counted to their end only` : '';
  const kept =
    chance.kept < chance.tried ? `, ${chance.kept} of ${chance.tried} histories kept` : '';
  return `on time ${percent(chance.onTime)} · ${range}${mean}${lost} · ${chance.trials} trials${capped}${kept}`;
}

function holdups(at: Desk, { room, chance }: DeskRow): TemplateResult | typeof nothing {
  if (!chance || chance.shares.length === 0 || room.startedAt !== undefined) {
    return nothing;
  }
  return html`<h3>What the late minutes go to</h3>
    <ul class="shares">
      ${chance.shares.map((share) => {
        const form = `hold/${share.holdup}`;
        return html`<li>
          <span><b>${percent(share.share)}</b> ${share.words}</span>
          <button aria-label="Take it: ${share.words}" @click=${() => at.toggle(form)}>
            Take it
          </button>
          ${at.form === form ? takeForm(at, room.room, share.holdup) : nothing}
        </li>`;
      })}
    </ul>`;
}

function useForm(at: Desk, room: RoomPart): TemplateResult {
  return html`<form
    class="card"
    @submit=${onSubmit((fields, form) => {
      const typed = fields['until'] ?? '';
      const time = typed === '' ? undefined : timeIn(at, form, 'until');
      if (typed !== '' && time === undefined) {
        return;
      }
      const use = fields['use'] as RoomUse;
      at.tell(
        `room ${room.room} is ${useName(use)}`,
        { type: 'say-room', room: room.room, use, ...(time === undefined ? {} : { until: time }) },
        { seen: room.revision },
      );
      form.reset();
    })}
  >
    <h3>
      The room: ${useName(room.use)}${room.useUntil ? ` until ${at.hhmm(room.useUntil)}` : ''}
    </h3>
    <div class="do">
      <select name="use" aria-label="the room is">
        ${USES_IN_ORDER.map((use) => html`<option value=${use}>${useName(use)}</option>`)}
      </select>
      ${timeField('until', 'until')}
      <button>Say</button>
      ${
        room.use === 'emergency'
          ? nothing
          : html`<button
              type="button"
              @click=${() =>
                at.tell(
                  `room ${room.room} is taken for an emergency`,
                  { type: 'say-room', room: room.room, use: 'emergency' },
                  { seen: room.revision },
                )}
            >
              Emergency takes it
            </button>`
      }
    </div>
  </form>`;
}

function caseForms(at: Desk, row: DeskRow, plan: CasePart): TemplateResult {
  return html`${agree(at, plan)} ${surgeon(at, row.room.room)} ${steps(at, plan)}
  ${owesReason(row, at.suite?.graceMinutes ?? 0, at.now) || plan.reason ? reason(at, plan) : nothing}
  ${swapForm(at, row, plan)} ${cancel(at, plan)}`;
}

function agree(at: Desk, plan: CasePart): TemplateResult {
  return html`<form
    class="card"
    @submit=${onSubmit((_, form) => {
      const time = timeIn(at, form, 'at');
      if (time !== undefined) {
        at.tell(
          `room ${plan.room}: ${at.hhmm(time)} agreed`,
          { type: 'agree-later', caseId: plan.caseId, at: time },
          { seen: plan.revision },
        );
        form.reset();
      }
    })}
  >
    <h3>
      Booked
      ${at.hhmm(plan.bookedAt)}${
        plan.agreedAt === undefined ? '' : `, agreed ${at.hhmm(plan.agreedAt)}`
      }
    </h3>
    <div class="do">
      ${timeField('at', 'agreed start')}
      <button>Agree a later start</button>
      ${
        plan.agreedAt === undefined
          ? nothing
          : html`<button
              type="button"
              @click=${() =>
                at.tell(
                  `room ${plan.room}: back to ${at.hhmm(plan.bookedAt)}`,
                  { type: 'agree-later', caseId: plan.caseId },
                  { seen: plan.revision },
                )}
            >
              Back to ${at.hhmm(plan.bookedAt)}
            </button>`
      }
    </div>
  </form>`;
}

function surgeon(at: Desk, room: string): TemplateResult | typeof nothing {
  const item = at
    .list('item')
    .find((i) => i.room === room && i.section === 'surgeon' && i.item.endsWith('.seen'));
  if (!item) {
    return nothing;
  }
  const seen = item.state === 'good';
  return html`<form
    class="card"
    @submit=${onSubmit((_, form) => {
      const time = timeIn(at, form, 'at');
      if (time !== undefined) {
        at.tell(`room ${room}: surgeon expected ${at.hhmm(time)}`, {
          type: 'expect-item',
          item: item.item,
          at: time,
        });
        form.reset();
      }
    })}
  >
    <h3>
      Surgeon
      ${
        seen
          ? `seen ${at.hhmm(item.since)}`
          : item.expectedAt === undefined
            ? 'not seen'
            : `not seen, says ${at.hhmm(item.expectedAt)}`
      }
    </h3>
    ${
      seen
        ? nothing
        : html`<div class="do">
            <button
              type="button"
              @click=${() =>
                at.tell(
                  `room ${room}: surgeon seen`,
                  { type: 'good', item: item.item, evidence: { kind: 'touch' } },
                  { seen: item.revision },
                )}
            >
              Seen
            </button>
            ${timeField('at', 'surgeon expected at')}
            <button>Says this time</button>
          </div>`
    }
  </form>`;
}

function steps(at: Desk, plan: CasePart): TemplateResult {
  const next = nextStep(plan);
  const reached = STEPS.filter((s) => reachedAt(plan, s) !== undefined);
  return html`<div class="card">
    <h3>
      ${
        reached.length === 0
          ? 'Start: nothing yet'
          : reached.map((s) => `${stepName(s)} ${at.hhmm(reachedAt(plan, s))}`).join(' · ')
      }
      ${plan.flagged.length > 0 ? ` · ${plan.flagged.length} open at the time` : ''}
    </h3>
    ${
      next
        ? html`<div class="do">
            <button
              @click=${() =>
                at.tell(`room ${plan.room}: ${stepName(next)}`, {
                  type: 'reach',
                  caseId: plan.caseId,
                  step: next,
                })}
            >
              ${stepName(next)} now
            </button>
          </div>`
        : nothing
    }
  </div>`;
}

function reason(at: Desk, plan: CasePart): TemplateResult {
  const given = plan.reason;
  return html`<form
    class="card"
    @submit=${onSubmit((fields, form) => {
      const chosen = fields['reason'] as DelayReason;
      const said = fields['said'] ?? '';
      const more = said === '' ? {} : { said };
      const other = (form.querySelector('[data-as=other]') as HTMLInputElement | null)?.checked;
      if (other) {
        at.tell(
          `room ${plan.room}: another reason seen, ${reasonName(chosen)}`,
          { type: 'dispute-reason', caseId: plan.caseId, instead: chosen, ...more },
          { seen: plan.revision },
        );
      } else {
        at.tell(
          `room ${plan.room}: reason ${reasonName(chosen)}`,
          { type: 'give-reason', caseId: plan.caseId, reason: chosen, ...more },
          { seen: plan.revision },
        );
      }
      form.reset();
    })}
  >
    <h3>
      ${
        given
          ? `Reason for the late start: ${reasonName(given)}${plan.reasonAgreed ? ', agreed' : ''}${plan.reasonInstead ? `, another sees ${reasonName(plan.reasonInstead)}` : ''}`
          : 'Reason for the late start'
      }
    </h3>
    <div class="do">
      <select name="reason" aria-label="reason">
        ${REASONS.map((r) => html`<option value=${r}>${reasonName(r)}</option>`)}
      </select>
      ${textField('said', 'in words, no names')}
    </div>
    <div class="do">
      ${
        given
          ? html`<label class="check"
                ><input type="checkbox" data-as="other" /> I see another reason than
                ${reasonName(given)}</label
              >
              <button
                type="button"
                ?disabled=${plan.reasonAgreed}
                @click=${() =>
                  at.tell(
                    `room ${plan.room}: reason agreed`,
                    { type: 'agree-reason', caseId: plan.caseId },
                    { seen: plan.revision },
                  )}
              >
                Agree
              </button>`
          : nothing
      }
      <button>Say</button>
    </div>
  </form>`;
}

function cancel(at: Desk, plan: CasePart): TemplateResult {
  if (at.form !== 'cancel') {
    return html`<div class="card">
      <div class="do"><button @click=${() => at.toggle('cancel')}>Cancel the case…</button></div>
    </div>`;
  }
  return html`<form
    class="card"
    @submit=${onSubmit((fields) => {
      const why = fields['why'] ?? '';
      at.tell(
        `room ${plan.room}: case cancelled`,
        { type: 'cancel-case', caseId: plan.caseId, ...(why === '' ? {} : { reason: why }) },
        { seen: plan.revision },
      );
      at.done();
    })}
  >
    <h3>Cancel the first case of room ${plan.room}?</h3>
    ${textField('why', 'why, no names')}
    <div class="do">
      <button class="main">Cancel the case</button>
      <button type="button" @click=${() => at.done()}>Keep it</button>
    </div>
  </form>`;
}

function noteForm(at: Desk, room: RoomPart): TemplateResult {
  return html`<form
    class="card"
    @submit=${onSubmit((fields, form) => {
      const text = fields['text'] ?? '';
      if (text !== '') {
        at.tell(`note on room ${room.room}`, { type: 'add-note', room: room.room, text });
        form.reset();
      }
    })}
  >
    <div class="do">
      ${textField('text', 'note on this room, no names')}
      <button>Note</button>
    </div>
  </form>`;
}

function open(at: Desk, room: RoomPart): TemplateResult {
  const items = openItems(at.list('item'), room.room);
  return html`<h3>Open in this room: ${items.length}</h3>
    <ul class="open">
      ${items.slice(0, OPEN_SHOWN).map((i) => openLine(at, i))}
    </ul>
    ${
      items.length > OPEN_SHOWN
        ? html`<p class="dim">and ${items.length - OPEN_SHOWN} more</p>`
        : nothing
    }`;
}

function openLine(at: Desk, item: ItemPart): TemplateResult {
  const fault = item.state === 'fault';
  return html`<li>
    <span class="mark ${item.state}"></span>
    <span
      >${fault ? item.name : keyWords(item)}
      <small
        >${stateName(item.state)}${item.what ? ` · ${item.what}` : ''}${
          fault ? (item.mender ? ' · someone is on it' : ' · nobody is on it') : ''
        }${item.expectedAt === undefined ? '' : ` · expected ${at.hhmm(item.expectedAt)}`}</small
      ></span
    >
  </li>`;
}
