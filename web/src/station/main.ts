import { html, type PropertyValues } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { EvidenceUnion, ItemPart, PersonPart, Section, Step } from '../generated/wire.ts';
import type { Series } from '../hands/readings.ts';
import { cannotBe, openNames, outsideBand, readIn, short } from '../hands/items.ts';
import type { SectionView } from '../hands/items.ts';
import { keepOwnFiles } from '../hands/own-files.ts';
import { BoardPage } from '../hands/page.ts';
import '../look/index.ts';
import { shared } from '../hands/style.ts';
import { DrugDesk } from './drugs/desk.ts';
import { printed } from './drugs/panel.ts';
import { drugsStyle } from './drugs/style.ts';
import { FiguresDesk } from './figures/desk.ts';
import { figuresStyle } from './figures/style.ts';
import { caution, count, personName, SEND, sectionName, stepName } from '../hands/words.ts';
import {
  canSweep,
  good,
  type Half,
  restWords,
  signOn,
  stationView,
  type StationView,
  sweep,
  idleWords,
} from './model.ts';
import { withUnit } from '../words/index.ts';
import { RoomReadings, technicianFor } from './readings.ts';
import { keptAt } from './kept.ts';
import { middle } from './middle.ts';
import { fitCards, foot } from './side.ts';
import { type Asking, type HandingOver, type OpenSection, roomOf, type Side } from './sides.ts';
import { sideStyle } from './style-side.ts';
import { stationStyle } from './style.ts';
import { top } from './top.ts';

@customElement('sunup-station')
export class Station extends BoardPage {
  static override styles = [shared, sideStyle, stationStyle, figuresStyle, drugsStyle];

  readonly room: string;
  half: Half = 'set-up';
  opened: OpenSection | undefined;
  side: Side = { kind: 'waits' };
  readonly figures: FiguresDesk;
  readonly drugs: DrugDesk;
  readonly readings: RoomReadings;
  /** While what was written on paper is entered: when it was done. */
  private paperAt: number | undefined;
  private signed: string | undefined;
  /** What is said as soon as somebody has signed on. */
  private afterSign: (() => void) | undefined;

  constructor() {
    const room = roomOf(location.pathname);
    super('station', `station-${room}`, undefined, (part) => keptAt(room, part));
    this.room = room;
    const changed = () => this.requestUpdate();
    this.figures = new FiguresDesk(room, changed, () => this.now);
    this.drugs = new DrugDesk(this);
    this.readings = new RoomReadings(room, changed);
    this.signed = sessionStorage.getItem(this.storageKey) ?? undefined;
  }

  override get person(): string | undefined {
    const { paired, signed } = this.live.state.entry;
    if (paired) return signed?.as;
    const here = this.signed && this.live.list('person').find((p) => p.person === this.signed);
    return here && here.leftAt === undefined ? here.person : undefined;
  }

  override get doneAt(): number | undefined {
    return this.paperAt;
  }

  get view(): StationView {
    return stationView(
      {
        rooms: this.list('room'),
        cases: this.list('case'),
        items: this.list('item'),
        waits: this.list('wait'),
        next: this.list('next'),
        nextItems: this.list('next-item'),
      },
      this.room,
      this.half,
      this.now,
      this.zone,
    );
  }

  item(ref: string): ItemPart | undefined {
    return this.view.items.find((i) => i.item === ref);
  }

  override render() {
    const view = this.view;
    const idle = idleWords(this.live.state.everSeen, this.suite?.phase, view, this.room);
    if (this.live.state.everSeen) {
      const shown = view.half === 'next' ? view.next?.caseId : view.plan?.caseId;
      this.figures.bench.inRoom(shown, view.next?.caseId);
      // A picture that was kept is shown while the board is away: there is nobody to ask.
      if (!this.live.state.stale) this.readings.follow(view.items);
    }
    this.drugs.inRoom(view.plan?.caseId);
    document.title = `Station ${this.room} · Sunup`;
    return html`
      ${top(this, view)}
      <sunup-banner hands .live=${this.live}></sunup-banner>
      ${middle(this, view, idle)}
      <footer>
        <p class="caution">${caution()}</p>
        ${foot(this)}
      </footer>
      ${printed(this)}
    `;
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    fitCards(this.renderRoot.querySelector<HTMLElement>('.waits'));
  }

  show(side: Side): void {
    this.side = side;
    this.requestUpdate();
    void this.updateComplete.then(() => {
      const to = this.renderRoot.querySelector<HTMLElement>('.sheet [data-first]');
      to?.focus();
    });
  }

  close(): void {
    this.afterSign = undefined;
    this.show({ kind: 'waits' });
  }

  /** @param name of a figure to go to at once */
  openFigures(name?: string): void {
    this.close();
    this.drugs.close();
    this.figures.open(name);
  }

  openDrugs(): void {
    this.close();
    this.figures.close();
    this.drugs.open();
  }

  /** The set-up is somebody's: who it is comes first, then what was touched. */
  private signedOn(then: () => void): void {
    if (this.person !== undefined || this.view.half === 'beside') {
      then();
      return;
    }
    this.show({ kind: 'who' });
    this.afterSign = then;
  }

  showHalf(half: Half): void {
    this.half = half;
    this.opened = undefined;
    this.close();
  }

  openSection(section: Section, except?: Set<string>): void {
    const same = this.opened?.section === section && !this.opened.except && !except;
    this.opened = same ? undefined : { section, except };
    this.close();
  }

  /** Other lines of the open section. */
  showLines(from: number): void {
    if (this.opened) this.opened = { ...this.opened, from };
    this.requestUpdate();
  }

  closeSection(): void {
    this.opened = undefined;
    this.close();
  }

  /** Who it is says so; where screens are paired, with a PIN. */
  sign(person: PersonPart): void {
    if (this.paired && this.person !== person.person) {
      this.signing?.open(person, () => this.signedAs(person));
    } else {
      this.signedAs(person);
    }
  }

  private signedAs(person: PersonPart): void {
    const command = signOn(person, this.room);
    this.signed = person.person;
    sessionStorage.setItem(this.storageKey, person.person);
    if (command) {
      this.tell(`${personName(person)} ${command.type === 'arrive' ? 'here' : 'joined'}`, command, {
        about: [person.key],
      });
    }
    const then = this.afterSign;
    if (!then && (person.role === 'circulating' || person.role === 'scrub')) {
      this.half = 'beside';
    }
    this.close();
    then?.();
  }

  leave(person: PersonPart): void {
    this.tell(`${personName(person)} leaves room ${this.room}`, {
      type: 'leave',
      person: person.person,
      room: this.room,
    });
    this.signOff();
  }

  /** After both have signed; what the one who comes wants to see again is open from now on. */
  handOver(over: HandingOver): void {
    // Who goes is signed on here, or nobody is: then it is kept without signatures.
    if (this.person === over.from.person) {
      this.signedByTwo(over.to, 'hand-over', (second) => this.handedOver(over, second), true);
    } else {
      this.handedOver(over);
      if (this.paired) this.signing?.open(over.to);
    }
  }

  private handedOver({ from, to, again }: HandingOver, second?: string): void {
    this.tell(
      `handed over to ${personName(to)}`,
      { type: 'hand-over', from: from.person, to: to.person, room: this.room },
      { second },
    );
    this.signed = to.person;
    sessionStorage.setItem(this.storageKey, to.person);
    const open = this.view.items.filter((i) => again.has(i.section) && i.state === 'good');
    if (open.length > 0) {
      const sections = [...again].map((s) => sectionName(s).toLowerCase()).join(', ');
      this.say(
        `to be seen again: ${sections}`,
        open.map((i) => ({ command: { type: 'reopen', item: i.item }, seen: i.revision })),
        { about: [...again] },
      );
    }
    this.close();
  }

  /** From now on touches say what was done at this time; without one, what is done now. */
  enterFromPaper(doneAt: number | undefined): void {
    this.paperAt = doneAt;
    this.close();
  }

  signOff(): void {
    if (this.paired) void this.live.entry.signOff();
    this.signed = undefined;
    this.paperAt = undefined;
    sessionStorage.removeItem(this.storageKey);
    this.close();
  }

  /** "Gone through": first what the section asks for, then the sweep. */
  goneThrough(view: SectionView, except: ReadonlySet<string> = new Set()): void {
    this.signedOn(() => this.askOrSweep(view, except));
  }

  private askOrSweep(view: SectionView, except: ReadonlySet<string>): void {
    const ask = view.ask.filter((i) => !except.has(i.item));
    if (ask.length > 0) {
      this.ask(ask, view, new Set(except));
      return;
    }
    this.sendSweep(view, new Set(except));
  }

  private sendSweep(view: SectionView, except: Set<string>): void {
    const name = sectionName(view.section);
    const but = except.size > 0 ? `, but ${count(except.size, 'thing')}` : '';
    const command = sweep(view, except, this.person);
    this.tell(`${name} gone through${but}`, command, { about: [view.section] });
    this.opened = undefined;
    this.close();
  }

  /** One touch for all sections that ask nothing more. */
  restGoneThrough(rest: readonly SectionView[]): void {
    this.signedOn(() =>
      this.say(
        `gone through: ${restWords(rest)}`,
        rest.map((s) => ({ command: sweep(s, new Set(), this.person) })),
        { about: rest.map((s) => s.section) },
      ),
    );
  }

  ask(items: readonly ItemPart[], then?: SectionView, except = new Set<string>()): void {
    this.show({
      kind: 'ask',
      queue: items.map((i) => i.item),
      then: then?.section,
      next: then?.next,
      except,
      typed: '',
      wrong: '',
      given: undefined,
    });
  }

  press(asking: Asking, key: string): void {
    const typed = key === 'back' ? asking.typed.slice(0, -1) : asking.typed + key;
    asking.typed = /^\d{0,6}(\.\d{0,3})?$/.test(typed) ? typed : asking.typed;
    asking.wrong = '';
    this.requestUpdate();
  }

  /** The number as typed, sent or told why not. */
  enter(asking: Asking, item: ItemPart): void {
    const value = Number(asking.typed);
    const wrong = asking.typed === '' || Number.isNaN(value) ? 'Type what it reads.' : '';
    asking.wrong = wrong || cannotBe(item, value);
    if (asking.wrong) {
      this.requestUpdate();
      return;
    }
    const undone = item.asks.undo !== undefined;
    // As it was typed, with its unit: the board puts it into the sheet's.
    const evidence = { kind: 'number', value, unit: readIn(item), undone } as const;
    this.give(asking, item, evidence, outsideBand(item, value));
  }

  /** Gives an answer; a second person is asked for where the sheet wants one. */
  give(asking: Asking, item: ItemPart, evidence: EvidenceUnion, fault = false): void {
    if (fault) {
      asking.except.add(item.item);
    }
    if (item.asks.witness) {
      asking.given = evidence;
      this.requestUpdate();
      return;
    }
    this.sendGood(asking, item, evidence);
  }

  sendGood(asking: Asking, item: ItemPart, evidence: EvidenceUnion, witness?: PersonPart): void {
    const send = (second?: string) => this.sentGood(asking, item, evidence, witness, second);
    if (witness) this.signedByTwo(witness, 'good', send);
    else send();
  }

  private sentGood(
    asking: Asking,
    item: ItemPart,
    evidence: EvidenceUnion,
    witness?: PersonPart,
    second?: string,
  ): void {
    const said = evidence.kind === 'number' ? ` ${withUnit(evidence.value, evidence.unit)}` : '';
    const word = evidence.kind === 'choice' ? `: ${evidence.word.replace(/^!/, '')}` : '';
    this.say(
      `${short(item.name)}${said}${word}`,
      [good(item, evidence, this.person, witness?.person)],
      {
        about: [item.item, item.section],
        second,
      },
    );
    this.nextAsk(asking);
  }

  skip(asking: Asking): void {
    asking.except.add(asking.queue[0]!);
    this.nextAsk(asking);
  }

  private nextAsk(asking: Asking): void {
    const queue = asking.queue.slice(1);
    if (queue.length > 0) {
      this.show({ ...asking, queue, typed: '', wrong: '', given: undefined });
      return;
    }
    const view = this.view.sections.find(
      (s) => s.section === asking.then && s.next === asking.next,
    );
    const left = view?.open.filter((i) => !asking.except.has(i.item)) ?? [];
    // After the last answer the section is gone through, unless nothing of it is left to say.
    if (view && canSweep(view) && left.length > 0) {
      this.sendSweep(view, asking.except);
    } else {
      this.close();
    }
  }

  touchGood(item: ItemPart): void {
    this.say(`${short(item.name)} good`, [good(item, { kind: 'touch' }, this.person)], {
      about: [item.item, item.section],
    });
    this.close();
  }

  /** A command about one item, with the revision that was shown. */
  about(item: ItemPart, label: string, command: Parameters<BoardPage['tell']>[1]): void {
    this.tell(`${short(item.name)}: ${label}`, command, {
      seen: item.revision,
      about: [item.item, item.section],
    });
    this.close();
  }

  reach(step: Step, open: readonly ItemPart[]): void {
    const plan = this.view.plan;
    if (!plan) {
      return;
    }
    const withOpen = open.length > 0 ? ` with ${openNames(open)}` : '';
    this.tell(
      `${stepName(step)}${withOpen}`,
      { type: 'reach', caseId: plan.caseId, step },
      { about: [step], seen: plan.revision },
    );
  }

  sendSomeone(what: string): void {
    const text = what.trim() || SEND[1]!;
    this.tell(`asked for ${text}`, { type: 'ask-help', room: this.room, what: text });
    this.close();
  }

  /** A slow change is told to a technician by whoever sees it, as a call that is not urgent. */
  sendTechnician(series: Series): void {
    const what = technicianFor(series);
    const command = { type: 'ask-help', room: this.room, what } as const;
    this.tell(`asked for ${what}`, command, { about: [series.item] });
  }

  reportReady(): void {
    this.tell('reported ready', { type: 'report-ready', room: this.room }, { about: ['ready'] });
  }

  private get storageKey(): string {
    return `sunup.station.${this.room}.person`;
  }
}

keepOwnFiles('/station');
