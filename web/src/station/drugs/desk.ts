import type { CommandUnion, DrugListPart, DrugsPart, PersonPart } from '../../generated/wire.ts';
import type { Said } from '../../hands/said.ts';
import type { Station } from '../main.ts';
import {
  type Counting,
  counted,
  type DrugLine,
  drugLines,
  lapsingSoon,
  leftToCount,
  toDraw,
  toThrowAway,
} from './model.ts';

/** A package that was scanned, and what the board says of it. */
export interface Scanned {
  code: string;
  said: Said | undefined;
  /** Why it was not even asked. */
  away: boolean;
}

/** Drugs at a station: what is open, and what is being entered. All of it belongs to one case. */
export class DrugDesk {
  shown = false;
  /** The drug that is looked at. */
  chosen: string | undefined;
  scanned: Scanned | undefined;
  counting: Counting | undefined;
  wrong = '';
  /** The syringe whose label is being printed, by case and number. */
  printing: { drug: string; number: number } | undefined;
  private caseId: string | undefined;
  private readonly at: Station;

  constructor(at: Station) {
    this.at = at;
    // What the board says of a package is told beside it, not once more over the page.
    at.said.addEventListener('change', () => {
      const said = this.scanned?.said;
      if (this.shown && said?.state === 'refused' && !said.seen) at.said.putAway(said);
    });
  }

  /** True while a package is stopped: nothing else is to be done first. */
  get stopped(): boolean {
    return this.scanned?.away === true || this.scanned?.said?.state === 'refused';
  }

  open(): void {
    this.shown = true;
    this.at.requestUpdate();
  }

  close(): void {
    this.shown = false;
    this.clear();
  }

  /** Another case is in the room: what was being entered was for the last one. */
  inRoom(caseId: string | undefined): void {
    if (caseId !== this.caseId) {
      this.caseId = caseId;
      this.clear();
    }
  }

  private clear(): void {
    this.chosen = undefined;
    this.scanned = undefined;
    this.counting = undefined;
    this.printing = undefined;
    this.wrong = '';
    this.at.requestUpdate();
  }

  get list(): DrugListPart | undefined {
    return this.at.list('drug-list')[0];
  }

  get ofCase(): DrugsPart | undefined {
    return this.at.list('drugs').find((d) => d.caseId === this.caseId);
  }

  get lines(): DrugLine[] {
    return drugLines(this.list, this.ofCase, this.at.now);
  }

  soon(): DrugLine[] {
    return lapsingSoon(this.lines, this.at.now);
  }

  get throwAway() {
    return toThrowAway(this.at.list('drugs'), this.at.room);
  }

  /** Counts of cases that are not here any more and don't come out. */
  get leftCounts(): DrugsPart[] {
    return leftToCount(this.at.list('drugs'), this.at.room, this.caseId);
  }

  /** True if something is left of a case that is not here any more. */
  get anyLeft(): boolean {
    return this.leftCounts.length > 0 || this.throwAway.length > 0;
  }

  choose(drug: string): void {
    this.chosen = this.chosen === drug ? undefined : drug;
    this.counting = undefined;
    this.wrong = '';
    this.at.requestUpdate();
  }

  /** One touch says that these are drawn up and labelled. */
  drawn(drugs: readonly string[]): void {
    if (this.caseId === undefined || drugs.length === 0) return;
    const words = drugs.length === 1 ? drugs[0]! : `${drugs.length} drugs of the list`;
    this.at.tell(
      `${words} drawn`,
      { type: 'draw-drugs', caseId: this.caseId, drugs: [...drugs], ...this.by },
      { about: drugs.map((d) => `drug:${d}`) },
    );
  }

  allDrawn(): void {
    this.drawn(toDraw(this.lines));
  }

  /** A package's code, as a scanner types it; while the board is away nobody can check it. */
  scan(code: string): void {
    if (this.caseId === undefined || code === '') return;
    this.putAway();
    const away = this.at.live.state.stale;
    const said = away
      ? undefined
      : this.at.tell('package scanned', {
          type: 'draw-drugs',
          caseId: this.caseId,
          scan: code,
          ...this.by,
        });
    this.scanned = { code, said, away };
    this.at.requestUpdate();
  }

  /** The package is used although it stopped: why, and who saw it too. */
  useAllTheSame(drug: string, reason: string, witness: string): void {
    const { scanned, caseId } = this;
    const other = this.at.list('person').find((p) => p.person === witness);
    if (caseId === undefined || !scanned || !other) return;
    this.at.signedByTwo(other, 'draw-drugs', (second) => {
      if (caseId !== this.caseId) return;
      this.putAway();
      const command: CommandUnion = {
        type: 'draw-drugs',
        caseId,
        drugs: [drug],
        scan: scanned.code,
        reason,
        witness,
        ...this.by,
      };
      const said = this.at.tell(`${drug} drawn all the same`, command, { second });
      this.scanned = { ...scanned, said };
      this.at.requestUpdate();
    });
  }

  putAway(): void {
    this.scanned = undefined;
    this.at.requestUpdate();
  }

  discard(caseId: string, number: number, words: string): void {
    this.at.tell(`${words} thrown away`, {
      type: 'discard-drug',
      caseId,
      syringe: number,
      ...this.by,
    });
  }

  count(counting: Counting | undefined): void {
    this.counting = counting;
    this.wrong = '';
    this.at.requestUpdate();
  }

  /** The entry, signed by who is signed on here and by the second person. */
  enter(witness: PersonPart | undefined): void {
    const c = this.counting;
    if (!c) return;
    const command = counted(c, this.at.person, witness?.person);
    if (typeof command === 'string') {
      this.wrong = command;
      this.at.requestUpdate();
      return;
    }
    const enter = (second?: string) => {
      this.at.tell(`${c.drug} ${c.kind}`, command, { second });
      if (this.counting === c) this.count(undefined);
    };
    if (witness) this.at.signedByTwo(witness, 'count-drug', enter);
    else enter();
  }

  /** One label, of what was drawn just now. */
  print(drug: string, number: number): void {
    this.printing = { drug, number };
    this.at.requestUpdate();
    void this.at.updateComplete.then(() => {
      const page = new CSSStyleSheet();
      page.replaceSync('@page { size: 40mm 15mm; margin: 0 }');
      document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
      const done = () => {
        document.adoptedStyleSheets = document.adoptedStyleSheets.filter((s) => s !== page);
        this.printing = undefined;
        this.at.requestUpdate();
      };
      addEventListener('afterprint', done, { once: true });
      print();
    });
  }

  private get by(): { by?: string } {
    return this.at.person === undefined ? {} : { by: this.at.person };
  }
}
