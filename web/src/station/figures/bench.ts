import type { Answer, Card, CaseAnswer, Entry, Input, Listed, Question } from './api.ts';

/**
 * What is entered at this station for bedside figures. All of it belongs to the case that is in the
 * room: when another one comes, everything is blank. Facts of the patient count a revision, and an
 * answer is shown only for the case and the revision that it was worked out for. Kept in this page
 * alone, never stored.
 */
export class Bench {
  caseId: string | undefined;
  /** The room's next case that is set up, whether or not it is the one that is shown. */
  private begun: string | undefined;
  /** True after a case that had entries went: the page says so until something is touched. */
  blanked = false;
  figure: Listed | undefined;
  /** The input that is being entered. */
  active: string | undefined;
  /** When the answer came, by the board's clock. */
  workedAt = 0;
  /** False while the board did not say that the figures are still released. */
  confirmed = true;
  /** What the board said instead of an answer. */
  trouble = '';
  asking = false;
  /** True from choosing an input until a key: then a number that is there is typed anew. */
  private fresh = false;
  private revision = 0;
  private turn = 0;
  private patient = new Map<string, Entry>();
  private own = new Map<string, Entry>();
  private answered: CaseAnswer | undefined;

  /**
   * Blanks all when the one or the other changes: when another screen begins the next case, the
   * patient of the one before is gone, whatever is shown here.
   *
   * @param caseId the case that is shown at this station
   * @param begun the room's next case, if one is set up
   */
  inRoom(caseId: string | undefined, begun?: string): void {
    if (caseId === this.caseId && begun === this.begun) {
      return;
    }
    this.begun = begun;
    this.blanked = this.patient.size > 0 || this.own.size > 0;
    this.caseId = caseId;
    this.revision = 0;
    this.patient.clear();
    this.own.clear();
    this.blankAnswer();
    this.active = this.firstEmpty();
  }

  open(figure: Listed | undefined): void {
    this.figure = figure;
    this.own.clear();
    this.blanked = false;
    this.blankAnswer();
    this.active = this.firstEmpty();
  }

  /** The answer if it still holds for what is entered and for the case in the room. */
  get answer(): Answer | undefined {
    const a = this.answered;
    return a && a.caseId === this.caseId && a.revision === this.revision ? a.answer : undefined;
  }

  /** True if what is worked out rests on facts of the patient, and so on who is in the room. */
  get ofPatient(): boolean {
    return this.card?.inputs.some((i) => i.ofPatient && this.patient.has(i.name)) ?? false;
  }

  /** What the board says of the figures now: an answer of one that went or changed goes. */
  follow(list: readonly Listed[]): void {
    this.confirmed = true;
    const was = this.figure;
    const now = list.find((one) => one.card.name === was?.card.name);
    if (was === undefined) return;
    if (now === undefined) {
      this.open(undefined);
      return;
    }
    this.figure = now;
    if (now.off === was.off && now.fingerprint === was.fingerprint) return;
    this.blankAnswer();
    this.trouble =
      now.off === undefined
        ? 'This figure was changed or released anew meanwhile. Work it out again.'
        : `This figure is ${now.off}.`;
  }

  get card(): Card | undefined {
    return this.figure?.card;
  }

  get input(): Input | undefined {
    return this.card?.inputs.find((i) => i.name === this.active);
  }

  entry(name: string): Entry | undefined {
    return this.patient.get(name) ?? this.own.get(name);
  }

  /** Chooses what is entered; a result makes room for it, as it is about to be another one. */
  choosing(name: string): void {
    this.active = name;
    this.fresh = true;
    const kind = this.answer?.answer;
    if (kind === 'worked' || kind === 'off') {
      this.blankAnswer();
    }
  }

  /** True while this input is to be typed a second time. */
  again(name: string): boolean {
    const a = this.answer;
    return a?.answer === 'asked-again' && a.reasons.some((r) => r.input === name);
  }

  /** What was wrong with an input. */
  wrong(name: string): string {
    const a = this.answer;
    return a?.answer === 'refused'
      ? a.reasons
          .filter((r) => r.input === name)
          .map((r) => r.message)
          .join('. ')
      : '';
  }

  /** One key of the pad. In a second entry it types that and leaves the first as it is. */
  press(key: string): void {
    const input = this.input;
    if (!input || input.kind !== 'number') {
      return;
    }
    const entry = this.entry(input.name) ?? { text: '' };
    if (this.again(input.name)) {
      this.keepAnswer(() => this.put(input, { ...entry, again: keyed(entry.again ?? '', key) }));
      return;
    }
    const anew = this.fresh && key !== 'back' && entry.unit !== undefined;
    this.fresh = false;
    const { text, unit }: Entry = anew ? { text: '' } : entry;
    const next = keyed(text, key);
    if (next === '' && unit === undefined) {
      this.remove(input);
    } else {
      this.put(input, { text: next, ...(unit === undefined ? {} : { unit }) });
    }
  }

  /** The unit is said last and each time; then the next thing is asked. */
  unit(unit: string): void {
    const input = this.input;
    const text = input && this.entry(input.name)?.text;
    if (input && text) {
      this.put(input, { text, unit });
      this.active = this.firstEmpty(input.name) ?? input.name;
    }
  }

  choose(word: string): void {
    const input = this.input;
    if (input) {
      this.put(input, { text: word });
      this.active = this.firstEmpty(input.name) ?? input.name;
    }
  }

  clear(): void {
    const input = this.input;
    if (input) {
      this.remove(input);
    }
  }

  /** What is asked of the board, or nothing if no case is in the room. */
  question(room: string): Question | undefined {
    if (this.caseId === undefined || !this.card) {
      return undefined;
    }
    const wanted = (map: Map<string, Entry>): Record<string, Entry> =>
      Object.fromEntries(
        [...map].filter(
          ([name, e]) => e.text !== '' && this.card!.inputs.some((i) => i.name === name),
        ),
      );
    return {
      figure: this.card.name,
      room,
      caseId: this.caseId,
      revision: this.revision,
      patient: wanted(this.patient),
      own: wanted(this.own),
    };
  }

  /** Says that a question was sent. @returns takes its answer, unless something changed meanwhile */
  asked(): (answer: CaseAnswer | undefined, trouble?: string, at?: number) => void {
    const turn = ++this.turn;
    this.asking = true;
    this.trouble = '';
    return (answer, trouble = '', at = 0) => {
      if (turn !== this.turn) {
        return;
      }
      this.asking = false;
      this.trouble = trouble;
      this.answered = answer;
      this.workedAt = at;
      const of = answer?.answer;
      if (of?.answer === 'asked-again') {
        this.active = of.reasons[0]?.input;
      }
    };
  }

  private put(input: Input, entry: Entry): void {
    this.blanked = false;
    (input.ofPatient ? this.patient : this.own).set(input.name, entry);
    this.changed(input);
  }

  private remove(input: Input): void {
    (input.ofPatient ? this.patient : this.own).delete(input.name);
    this.changed(input);
  }

  /** A weight that was entered twice was so for its age: another age asks again. */
  private changed(input: Input): void {
    if (input.ofPatient) {
      this.revision++;
      const weight = this.patient.get('weight');
      if (input.name === 'age' && weight?.again !== undefined) {
        this.patient.set('weight', {
          text: weight.text,
          ...(weight.unit === undefined ? {} : { unit: weight.unit }),
        });
      }
    }
    this.blankAnswer();
  }

  /** A second entry does not answer anything yet; what asked for it stays in sight. */
  private keepAnswer(change: () => void): void {
    const asked = this.answered;
    change();
    this.answered = asked && { ...asked, revision: this.revision };
  }

  private blankAnswer(): void {
    this.answered = undefined;
    this.trouble = '';
    this.asking = false;
    this.turn++;
  }

  /** The first needed input after this one, or of all, that is not entered. */
  private firstEmpty(after?: string): string | undefined {
    const inputs = this.card?.inputs ?? [];
    const from = inputs.findIndex((i) => i.name === after) + 1;
    const inTurn = [...inputs.slice(from), ...inputs.slice(0, from)];
    return inTurn.find((i) => i.needed && !this.whole(i))?.name;
  }

  private whole(input: Input): boolean {
    const e = this.entry(input.name);
    return e !== undefined && e.text !== '' && (input.kind === 'choice' || e.unit !== undefined);
  }
}

/** At most nine digits with one point. What is not a number yet is the board's to refuse. */
function keyed(text: string, key: string): string {
  const next = key === 'back' ? text.slice(0, -1) : text + key;
  return /^[\d.]{0,10}$/.test(next) ? next : text;
}
