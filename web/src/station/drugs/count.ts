import { html, nothing, type TemplateResult } from 'lit';
import type { CountEntryShown, CountKind } from '../../generated/wire.ts';
import { padKeys } from '../../hands/pad.ts';
import { personName } from '../../hands/words.ts';
import type { Station } from '../main.ts';
import { witnesses } from '../model.ts';
import { ampouleWords, type Counting, type DrugLine, isUnits, unitOf } from './model.ts';

const KINDS: readonly CountKind[] = ['drawn', 'given', 'wasted', 'returned'];
const ENTRIES = 4;

/** The count of the case's controlled drugs. */
export function countPanel(
  at: Station,
  lines: readonly DrugLine[],
): TemplateResult | typeof nothing {
  const of = at.drugs.ofCase;
  const controlled = lines.filter((l) => l.drug.ampoule !== undefined);
  if (at.drugs.counting) return entering(at, at.drugs.counting);
  if (!of || (controlled.length === 0 && of.counts.length === 0)) return nothing;
  return html`<div class="count" role="group" aria-label="count of controlled drugs">
    <h3>
      Controlled
      <small
        >${of.open.length > 0 ? of.open.join(' · ') : of.counts.length > 0 ? 'the count comes out' : 'nothing drawn'}</small
      >
    </h3>
    ${controlled.map((l) => {
      const sum = of.counts.find((c) => c.drug === l.drug.name);
      return html`<div class="line">
        <span
          ><b>${l.drug.shown}</b
          ><small
            >${
              sum
                ? `${sum.drawn} drawn, ${sum.returned} returned, ${sum.given} given, ${sum.wasted} wasted`
                : `ampoule of ${ampouleWords(l.drug.ampoule!)}`
            }</small
          ></span
        >
        <button
          aria-label="Count: ${l.drug.shown}"
          @click=${() => at.drugs.count({ caseId: of.caseId, kind: sum ? 'given' : 'drawn', drug: l.drug.name, typed: '', unit: unitOf(l.drug.ampoule) })}
        >
          Count
        </button>
      </div>`;
    })}
    ${of.entries.slice(-ENTRIES).map((e) => entry(at, of.caseId, e))}
    ${of.entries.length > ENTRIES ? html`<p class="dim">and ${of.entries.length - ENTRIES} before</p>` : nothing}
  </div>`;
}

/** What is still to be counted out of a case that is not in the room any more. */
export function leftCounts(at: Station): TemplateResult | typeof nothing {
  const left = at.drugs.leftCounts;
  return left.length === 0
    ? nothing
    : html`<div class="old" role="group" aria-label="still to be counted out">
        <h3>Controlled, of a case that is not here any more: count it out</h3>
        ${left.flatMap((d) =>
          d.counts
            .filter((c) => !c.comesOut)
            .map(
              (c, i) =>
                html`<div class="line">
                  <span>${d.open[i]}</span>
                  <button
                    aria-label="Count out: ${c.drug}"
                    @click=${() => at.drugs.count({ caseId: d.caseId, kind: 'returned', drug: c.drug, typed: '', unit: unitOf(at.drugs.list?.drugs.find((one) => one.name === c.drug)?.ampoule) })}
                  >
                    Count
                  </button>
                </div>`,
            ),
        )}
      </div>`;
}

function entry(at: Station, caseId: string, e: CountEntryShown): TemplateResult {
  const second = e.unsigned ? `${e.witness} (named, no signature)` : e.witness;
  const signed = e.witness ? `${e.by} and ${second}` : e.by;
  return html`<div class="line entry">
    <span class=${e.struck ? 'struck' : ''}
      >${e.number + 1}. ${e.words}<small
        >${at.hhmm(e.at)} · ${signed}${e.struck ? ' · struck' : ''}</small
      ></span
    >
    ${
      e.struck || e.kind === 'struck'
        ? nothing
        : html`<button
            class="soft"
            aria-label="Strike entry ${e.number + 1}"
            @click=${() => at.drugs.count({ caseId, kind: 'struck', drug: `entry ${e.number + 1}`, typed: '', unit: 'micrograms', entry: e.number })}
          >
            Strike
          </button>`
    }
  </div>`;
}

function entering(at: Station, c: Counting): TemplateResult {
  const drug = at.drugs.list?.drugs.find((d) => d.name === c.drug);
  const title = c.kind === 'struck' ? `Strike ${c.drug}` : (drug?.shown ?? c.drug);
  return html`<div class="count entering" role="group" aria-label=${title}>
    <div class="line">
      <h3>${title}</h3>
      <button @click=${() => at.drugs.count(undefined)}>Back</button>
    </div>
    ${c.kind === 'struck' ? html`<p>The entry stays and no longer counts.</p>` : amount(at, c)}
    ${at.drugs.wrong ? html`<p class="wrong" role="alert">${at.drugs.wrong}</p>` : nothing}
    ${at.person === undefined ? html`<p class="wrong">Sign on first: this needs your signature.</p>` : signatures(at, c)}
  </div>`;
}

function amount(at: Station, c: Counting): TemplateResult {
  const press = (key: string) => {
    const typed = key === 'back' ? c.typed.slice(0, -1) : c.typed + key;
    const fits = isUnits(c.kind) ? /^\d{0,2}$/ : /^\d{0,6}(\.\d{0,3})?$/;
    at.drugs.count({ ...c, typed: fits.test(typed) ? typed : c.typed });
  };
  return html`<div class="kinds" role="group" aria-label="what happened">
      ${KINDS.map(
        (kind) =>
          html`<button
            aria-pressed=${c.kind === kind}
            @click=${() => at.drugs.count({ ...c, kind, typed: '' })}
          >
            ${kind}
          </button>`,
      )}
    </div>
    <p class="shown" aria-live="polite">
      <span>${c.typed || ' '}</span><small>${isUnits(c.kind) ? 'whole ampoules' : c.unit}</small>
    </p>
    ${padKeys(press, isUnits(c.kind) ? { off: '.' } : {})}
    ${
      isUnits(c.kind)
        ? nothing
        : html`<div class="kinds" role="group" aria-label="unit">
            ${(['micrograms', 'mg'] as const).map(
              (unit) =>
                html`<button
                  aria-pressed=${c.unit === unit}
                  @click=${() => at.drugs.count({ ...c, unit })}
                >
                  ${unit}
                </button>`,
            )}
          </div>`
    }`;
}

/** Who is signed on here is one; of all but what was given a second person signs too. */
function signatures(at: Station, c: Counting): TemplateResult {
  if (c.kind === 'given') {
    return html`<button class="main" @click=${() => at.drugs.enter(undefined)}>
      Enter as given
    </button>`;
  }
  const others = witnesses(at.list('person'), at.room, at.person);
  return html`<p class="dim">Signed by the second person who saw it:</p>
    <div class="kinds">
      ${others.map((p) => html`<button @click=${() => at.drugs.enter(p)}>${personName(p)}</button>`)}
    </div>
    ${others.length === 0 ? html`<p class="wrong">Nobody else has arrived: a second person must sign.</p>` : nothing}`;
}
