import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import type { ItemPart } from '../generated/wire.ts';
import { goingWords } from '../hands/bands.ts';
import { evidenceWords, isDone, type SectionView, wantsAnswer } from '../hands/items.ts';
import { sectionLetter, sectionName, stateName } from '../hands/words.ts';
import type { Station } from './main.ts';
import { isCarried } from './next-case.ts';
import type { OpenSection } from './sides.ts';
import { canSweep, restWords, type StationView, stepViews } from './model.ts';

/** The sections as rows, what one touch says of the rest, and the start chain. */
export function left(at: Station, view: StationView): TemplateResult {
  const open = at.opened;
  const shown = open && view.sections.find((s) => s.section === open.section);
  return html`
    ${
      at.doneAt === undefined
        ? nothing
        : html`<div class="from-paper" role="status">
            <span>From paper: done at ${at.hhmm(at.doneAt)}, entered now</span>
            <button @click=${() => at.show({ kind: 'paper', typed: '', wrong: '' })}>
              Another time
            </button>
            <button @click=${() => at.enterFromPaper(undefined)}>End</button>
          </div>`
    }
    <div class=${classMap({ rows: true, opened: shown !== undefined })}>
      <ol class="sections" aria-label="sections">
        ${repeat(
          view.sections,
          (s) => s.section,
          (s) => row(at, s, shown !== undefined),
        )}
      </ol>
      ${shown && open ? panel(at, shown, open) : nothing}
    </div>
    ${shown && open ? panelButtons(at, shown, open) : nothing}
    ${
      !shown && view.rest.length >= 2 && view.half !== 'beside'
        ? html`<div class="rest">
            <button class="soft" @click=${() => at.restGoneThrough(view.rest)}>
              Rest gone through <small>${restWords(view.rest)}</small>
            </button>
          </div>`
        : nothing
    }
    ${view.half === 'next' ? nothing : chain(at, view)}
  `;
}

function row(at: Station, view: SectionView, rail: boolean): TemplateResult {
  const name = sectionName(view.section);
  const going = goingWords(at, view.section);
  const current = at.opened?.section === view.section;
  const classes = { row: true, rise: true, [view.state]: true, going: going !== '', current };
  const letter =
    view.state === 'good'
      ? html`<span class="mark good"></span>`
      : view.state === 'fault'
        ? html`<span class="mark fault"></span>`
        : sectionLetter(view.section);
  return html`<li class=${classMap(classes)}>
    <button
      class="open"
      aria-expanded=${current}
      aria-label=${rail ? name : nothing}
      ?disabled=${view.items.length === 0}
      @click=${() => at.openSection(view.section)}
    >
      <span class="letter" aria-hidden="true">${letter}</span>
      ${rail ? nothing : html`<span><b>${name}</b><small>${going || view.small}</small></span>`}
    </button>
    ${rail ? nothing : rowButtons(at, view, name)}
  </li>`;
}

function rowButtons(at: Station, view: SectionView, name: string) {
  const fault = view.faults.length === 1 ? view.faults[0] : undefined;
  const sweepable = canSweep(view);
  // The list and its count belong to the first case.
  const list = view.section === 'drugs' && at.drugs.list !== undefined && view.next === undefined;
  return html`${
    list
      ? html`<button aria-label="${name}: list" @click=${() => at.openDrugs()}>List</button>`
      : nothing
  }
  ${
    sweepable && view.open.length > 1 && !list
      ? html`<button
          class="soft"
          aria-label="${name}: all but…"
          @click=${() => at.openSection(view.section, new Set())}
        >
          All but…
        </button>`
      : nothing
  }
  ${
    fault
      ? html`<button
          aria-label="${name}: mended"
          @click=${() => at.about(fault, 'mended', { type: 'mend', item: fault.item })}
        >
          Mended
        </button>`
      : nothing
  }
  ${
    sweepable
      ? html`<button aria-label="${name}: gone through" @click=${() => at.goneThrough(view)}>
          Gone through
        </button>`
      : nothing
  }`;
}

/** Lines that fit a section at the smallest screen; nothing is scrolled with gloves on. */
const FIT = 9;

/** The lines of a section; while exceptions are named, those that can be one. */
function lines(view: SectionView, open: OpenSection): ItemPart[] {
  return open.except
    ? view.items.filter((item) => !isDone(item) && item.state !== 'fault')
    : view.items;
}

function panel(at: Station, view: SectionView, open: OpenSection): TemplateResult {
  const name = sectionName(view.section);
  const { except, from = 0 } = open;
  return html`<section
    class="panel"
    aria-label=${except ? `${name}: touch what is not done` : name}
  >
    ${lines(view, open)
      .slice(from, from + FIT)
      .map((item) => itemRow(at, item, except))}
  </section>`;
}

/** Where not all lines fit: those that follow, and behind the last the first ones. */
function nextLines(at: Station, view: SectionView, open: OpenSection): TemplateResult | undefined {
  const all = lines(view, open).length;
  const from = open.from ?? 0;
  if (all <= FIT) return undefined;
  const next = from + FIT < all ? from + FIT : 0;
  const shown = Math.min(FIT, all - next);
  return html`<button class="soft" @click=${() => at.showLines(next)}>
    ${next === 0 ? `First ${shown}` : `Next ${shown}`} of ${all}
  </button>`;
}

/** Under an open section, where the rest is called gone through otherwise. */
function panelButtons(at: Station, view: SectionView, open: OpenSection): TemplateResult {
  const except = open.except ?? new Set<string>();
  const name = sectionName(view.section);
  return html`<div class="rest two">
    <button @click=${() => at.closeSection()}>
      Close
      ${name.toLowerCase()}${open.except ? html` <small>touch what is not done</small>` : nothing}
    </button>
    ${nextLines(at, view, open) ?? nothing}
    ${
      canSweep(view)
        ? html`<button
            class=${open.except ? 'main' : ''}
            @click=${() => at.goneThrough(view, except)}
          >
            ${name} gone through${except.size > 0 ? `, but ${except.size}` : ''}
          </button>`
        : nothing
    }
  </div>`;
}

function itemRow(at: Station, item: ItemPart, except: Set<string> | undefined): TemplateResult {
  return html`<div class=${classMap({ item: true, [item.state]: true })}>
    <span class="mark ${item.state}"></span>
    <span class="name"><span>${item.name}</span><small>${itemSmall(at, item)}</small></span>
    ${except ? exceptButton(at, item, except) : itemButtons(at, item)}
  </div>`;
}

function exceptButton(at: Station, item: ItemPart, except: Set<string>): TemplateResult {
  const not = except.has(item.item);
  return html`<button
    aria-pressed=${not}
    aria-label="${item.name}: not done"
    @click=${() => {
      if (not) {
        except.delete(item.item);
      } else {
        except.add(item.item);
      }
      at.requestUpdate();
    }}
  >
    ${not ? '✕ not done' : 'not done'}
  </button>`;
}

function itemButtons(at: Station, item: ItemPart): TemplateResult {
  const label = wantsAnswer(item) ? 'Enter' : 'Good';
  return html`${
      isDone(item) || item.state === 'fault'
        ? nothing
        : html`<button
            aria-label="${item.name}: ${label.toLowerCase()}"
            @click=${() => (wantsAnswer(item) ? at.ask([item]) : at.touchGood(item))}
          >
            ${label}
          </button>`
    }
    <button
      class="soft"
      aria-label="${item.name}: more"
      @click=${() => at.show({ kind: 'item', item: item.item })}
    >
      More
    </button>`;
}

/** One line of what is known of an item. */
export function itemSmall(at: Station, item: ItemPart): string {
  const going = goingWords(at, item.item);
  if (going) {
    return going;
  }
  const bits: string[] = [isCarried(at, item) ? 'carried over' : stateName(item.state)];
  const by = evidenceWords(item);
  if (by) {
    bits.push(by);
  }
  if (item.what) {
    bits.push(item.what);
  }
  if (item.state !== 'open') {
    bits.push(at.hhmm(item.since));
  }
  if (item.together && item.state === 'good') {
    bits.push('entered together');
  }
  if (item.expectedAt !== undefined && !isDone(item)) {
    bits.push(`expected ${at.hhmm(item.expectedAt)}`);
  }
  if (item.lapsesAt !== undefined && item.state === 'good') {
    bits.push(`counts until ${at.until(item.lapsesAt)}`);
  }
  return bits.join(' · ');
}

function chain(at: Station, view: StationView): TemplateResult | typeof nothing {
  if (!view.plan) {
    return nothing;
  }
  return html`<div class="chain" role="group" aria-label="start">
    ${stepViews(view.plan, view.items).map((step) => {
      const done = step.at !== undefined;
      const going = goingWords(at, step.step);
      const small = going
        ? going
        : done
          ? at.hhmm(step.at)
          : step.next
            ? step.open.length > 0
              ? `now, ${step.open.length} open`
              : 'now'
            : '';
      return html`<button
        class=${classMap({ next: step.next, done })}
        ?disabled=${done}
        @click=${() => at.reach(step.step, step.open)}
      >
        ${step.name}${small ? html`<small>${small}</small>` : nothing}
      </button>`;
    })}
  </div>`;
}
