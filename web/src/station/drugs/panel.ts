import { both, capital, worded } from '../../words/index.ts';
import { html, nothing, type TemplateResult } from 'lit';
import { classMap } from 'lit/directives/class-map.js';
import { onSubmit } from '../../hands/forms.ts';
import { goingWords } from '../../hands/bands.ts';
import { personName } from '../../hands/words.ts';
import type { Station } from '../main.ts';
import { witnesses } from '../model.ts';
import { countPanel, leftCounts } from './count.ts';
import { drugLabel } from './label.ts';
import { type DrugLine, justDrawn, labelTimes, toDraw } from './model.ts';

/** Drugs of the case, over the whole of the station between its head and its foot. */
export function drugsPanel(at: Station): TemplateResult {
  const drugs = at.drugs;
  const lines = drugs.lines;
  const open = toDraw(lines);
  return html`<section class="drugs" aria-label="Drugs">
    <div class="head">
      <h2>
        Drugs<small
          >the site's approved list, labels by ${drugs.list?.standard ?? ''}; it says nothing of how
          much to give</small
        >
      </h2>
      <button @click=${() => drugs.close()}>Close</button>
    </div>
    <div class=${classMap({ both: true, counting: drugs.counting !== undefined })}>
      <div class="list">
        ${drugs.ofCase === undefined ? html`<p class="dim">no case is here now</p>` : ofCase(at, lines, open)}
        ${leftCounts(at)} ${throwAway(at)}
      </div>
      <div class="aside">
        ${drugs.counting || drugs.ofCase === undefined ? nothing : scan(at)}
        ${drugs.stopped ? nothing : html`${chosen(at, lines)} ${countPanel(at, lines)}`}
      </div>
    </div>
  </section>`;
}

/** The labels of the case's list, and one touch for all of it. */
function ofCase(at: Station, lines: readonly DrugLine[], open: readonly string[]): TemplateResult {
  return html`${
      lines.length === 0
        ? html`<p class="dim">nothing of the approved list is for this case</p>`
        : html`<div class="labels">${lines.map((line) => tile(at, line))}</div>`
    }
    <button class="main" ?disabled=${open.length === 0} @click=${() => at.drugs.allDrawn()}>
      ${open.length === 0 ? 'All of the list is drawn' : `All of the list ${both('drugs.labelled')} (${open.length})`}
    </button>`;
}

function tile(at: Station, line: DrugLine): TemplateResult {
  return html`<button
    class=${classMap({ tile: true, [line.state]: true })}
    aria-pressed=${at.drugs.chosen === line.drug.name}
    @click=${() => at.drugs.choose(line.drug.name)}
  >
    ${drugLabel(line.drug)}<small>${stateWords(at, line)}</small>
  </button>`;
}

function stateWords(at: Station, line: DrugLine): string {
  const going = goingWords(at, `drug:${line.drug.name}`);
  if (going) return going;
  switch (line.state) {
    case 'open':
      return line.drug.ampoule === undefined ? 'not drawn' : 'not drawn · controlled';
    case 'lapsed':
      return `lapsed ${at.hhmm(line.syringe?.lapsesAt)}: draw again`;
    case 'drawn':
      return `${at.hhmm(line.syringe?.drawnAt)} · until ${at.until(line.syringe?.lapsesAt)}`;
  }
}

function chosen(at: Station, lines: readonly DrugLine[]): TemplateResult | typeof nothing {
  const line = lines.find((l) => l.drug.name === at.drugs.chosen);
  const caseId = at.drugs.ofCase?.caseId;
  if (!line || caseId === undefined || at.drugs.counting) return nothing;
  const { drug, syringe } = line;
  const fresh = justDrawn(line, at.now);
  return html`<div class="card" aria-label=${drug.shown} role="group">
    <p>
      <b>${drug.shown}</b> ${worded(drug.drugClass)}
      <small
        >${drug.amount} = ${drug.volume} of ${drug.concentration} · usable ${hours(drug.minutes)}
        once drawn, by ${drug.limit}</small
      >
      ${
        drug.alike.length > 0
          ? html`<small class="alike">Taken for: ${drug.alike.join(', ')}. Read the name.</small>`
          : nothing
      }
      ${syringe?.scanned ? html`<small>scanned ${syringe.scanned}</small>` : nothing}
    </p>
    <div class="do">
      <button @click=${() => at.drugs.drawn([drug.name])}>
        ${line.state === 'open' ? capital(both('drugs.labelled')) : 'Drawn again'}
      </button>
      ${
        fresh
          ? html`<button @click=${() => at.drugs.print(drug.name, fresh.number)}>
              Print its label
            </button>`
          : nothing
      }
      ${
        syringe
          ? html`<button @click=${() => at.drugs.discard(caseId, syringe.number, drug.shown)}>
              Thrown away
            </button>`
          : nothing
      }
    </div>
  </div>`;
}

function hours(minutes: number): string {
  return minutes % 60 === 0 ? `${minutes / 60} h` : `${minutes} min`;
}

/** What a package's code says, read by a scanner that types. */
function scan(at: Station): TemplateResult {
  const scanned = at.drugs.scanned;
  return html`<form
      class="scan"
      @submit=${onSubmit((fields, form) => {
        at.drugs.scan(fields['code'] ?? '');
        form.reset();
      })}
    >
      <input
        name="code"
        aria-label="code of a package, scanned"
        placeholder="scan a package"
        autocomplete="off"
        maxlength="500"
      />
      <button>Check</button>
    </form>
    ${scanned ? scanWords(at) : nothing}`;
}

function scanWords(at: Station): TemplateResult {
  const { said, away } = at.drugs.scanned!;
  if (away) {
    return html`<p class="stop" role="alert">
      The board is away: nobody can check this package. Read name, expiry and lot yourself, then
      touch what was drawn.
    </p>`;
  }
  if (said?.state === 'refused') {
    return html`<div class="stop" role="alert">
      <p>${said.words}</p>
      ${said.code === 'package-stop' ? allTheSame(at) : nothing}
      <button class="soft" @click=${() => at.drugs.putAway()}>Put aside, take another</button>
    </div>`;
  }
  return html`<p class="checked" role="status">
    ${said?.state === 'on-board' ? 'On the list, in date, and drawn.' : 'Asking the board …'}
  </p>`;
}

/** Why it is used, and by whom it was seen too. */
function allTheSame(at: Station): TemplateResult {
  const others = witnesses(at.list('person'), at.room, at.person);
  return html`<form
    @submit=${onSubmit((fields) =>
      at.drugs.useAllTheSame(fields['drug'] ?? '', fields['why'] ?? '', fields['witness'] ?? ''),
    )}
  >
    <select name="drug" aria-label="what it is">
      ${at.drugs.list?.drugs.map((d) => html`<option value=${d.name}>${d.shown}</option>`)}
    </select>
    <input
      name="why"
      required
      maxlength="120"
      autocomplete="off"
      aria-label="why it is used"
      placeholder="why it is used"
    />
    <select name="witness" aria-label="second person who saw it" required>
      ${others.map((p) => html`<option value=${p.person}>${personName(p)}</option>`)}
    </select>
    ${others.length === 0 ? html`<p>Nobody else has arrived: a second person must sign.</p>` : nothing}
    <button ?disabled=${others.length === 0}>Use it, both sign</button>
  </form>`;
}

function throwAway(at: Station): TemplateResult | typeof nothing {
  const old = at.drugs.throwAway;
  return old.length === 0
    ? nothing
    : html`<div class="old" role="group" aria-label="to throw away">
        <h3>Drawn for a case that is not here any more: throw away</h3>
        ${old.map(
          ({ caseId, syringe }) =>
            html`<div class="line">
              <span>${syringe.text}<small>drawn ${at.hhmm(syringe.drawnAt)}</small></span>
              <button @click=${() => at.drugs.discard(caseId, syringe.number, syringe.drug)}>
                Thrown away
              </button>
            </div>`,
        )}
      </div>`;
}

/** The label that is being printed; on screen it does not show. */
export function printed(at: Station): TemplateResult | typeof nothing {
  const one = at.drugs.printing;
  const drug = one && at.drugs.list?.drugs.find((d) => d.name === one.drug);
  const syringe = one && at.drugs.ofCase?.syringes.find((s) => s.number === one.number);
  return drug && syringe
    ? html`<div class="printed">
        ${drugLabel(drug, labelTimes(syringe.drawnAt, syringe.lapsesAt, at.zone))}
      </div>`
    : nothing;
}
