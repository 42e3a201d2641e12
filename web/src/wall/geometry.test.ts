import { describe, expect, it } from 'vitest';
import type { RoomPart, Standing } from '../generated/wire.ts';
import { beyondWords } from './column.ts';
import {
  axis,
  columnX,
  EARLY_MINUTES,
  heightOf,
  LARGE_LETTER,
  LATE_MINUTES,
  layOut,
  type Layout,
  picture,
  planned,
  spread,
  textWidth,
  WIDTH,
} from './geometry.ts';

const MINUTE = 60_000;
const TARGET = 450 * MINUTE;
const LETTER = 34;
const names = (count: number): string[] => Array.from({ length: count }, (_, i) => String(i + 1));
const words = (text: string, count: number, short = text) => ({
  long: Array<string>(count).fill(text),
  short: Array<string>(count).fill(short),
});
const layout = (count = 12, height = 520, letter = LETTER): Layout =>
  layOut(names(count), words('ahead', count), height, letter);

function room(standing: Standing, mid: number, half = 4, over: Partial<RoomPart> = {}): RoomPart {
  return {
    part: 'room',
    key: 'room/1',
    room: '1',
    order: 0,
    target: TARGET,
    agreed: false,
    standing,
    could10: TARGET + (mid - half) * MINUTE,
    could50: TARGET + mid * MINUTE,
    could90: TARGET + (mid + half) * MINUTE,
    lateMinutes: 0,
    orMore: false,
    word: standing,
    readyOpen: 0,
    use: 'free',
    revision: 1,
    ...over,
  };
}

describe('the layout of the horizon', () => {
  it.each([4, 12, 16, 24, 40, 60])('shouldKeepColumnsAndNumbersApartInsideTheWall: %d', (count) => {
    const it = layout(count);
    expect(columnX(it, 0) - it.columnWidth / 2).toBeGreaterThanOrEqual(it.left - 0.01);
    expect(columnX(it, count - 1) + it.columnWidth / 2).toBeLessThanOrEqual(WIDTH);
    const widest = textWidth(String(count), it.numberSize, true);
    expect(widest).toBeLessThan(it.columnWidth * it.numberRows);
    expect(it.numberSize).toBeGreaterThanOrEqual(LETTER);
    expect(it.fits).toBe(true);
  });

  it('shouldHaveTheLineBetweenTopAndBottomAndTheScaleEven', () => {
    const it = layout();
    expect(it.top).toBeLessThan(it.line);
    expect(it.line).toBeLessThan(it.bottom);
    expect(heightOf(it, -EARLY_MINUTES)).toBeCloseTo(it.top);
    expect(heightOf(it, LATE_MINUTES)).toBeCloseTo(it.bottom);
  });

  it('shouldKeepWordsUnderNumbersUpToThirtyNineRoomsAndThenDropThem', () => {
    expect(layout(12).wordRows).toBe(1);
    expect(layout(24).wordRows).toBe(2);
    expect(layout(40).wordRows).toBe(0);
  });

  it('shouldTakeShortWordsBeforeItLetsThemAlternate', () => {
    const sixteen = layOut(names(16), words('no word', 16, 'quiet'), 520, LETTER);
    expect(sixteen).toMatchObject({ wordRows: 1, short: true });
    const twelve = layOut(names(12), words('no word', 12, 'quiet'), 520, LETTER);
    expect(twelve).toMatchObject({ wordRows: 1, short: false });
  });

  it('shouldLeaveMoreThanASpaceBetweenTimesOfRoomsThatHaveStarted', () => {
    const started = layOut(names(12), words('in 07:30', 12, '07:30'), 520, LETTER);
    expect(started).toMatchObject({ wordRows: 1, short: true });
  });

  it('shouldGiveUpWordsBeforeLettersThatAreReadFromFarAway', () => {
    const far = layout(16, 400, 67.6);
    expect(far.letter).toBeGreaterThan(LARGE_LETTER);
    expect(far.wordRows).toBe(0);
    // Sixteen rooms have their numbers in one row at 55 inches and 6 metres; a second costs a line.
    expect(layout(16, 400, 67.64).numberRows).toBe(1);
    expect(far.numberSize).toBeGreaterThanOrEqual(67.6);
  });

  it('shouldSayWhenEvenNumbersAreTooSmallForTheDistance', () => {
    expect(layout(60, 400, 67.6).fits).toBe(false);
  });

  it('shouldSayBesideTheLineWhichSideIsEarlyAndWhichLateWithMinutesWhereTheyDoNotTouch', () => {
    const marks = [-20, -10, 10];
    const { early, late, now } = axis(layout(), marks, null);
    expect(early.map((word) => word.text)).toEqual(['10 early', '20 early']);
    expect(late.map((word) => word.text)).toEqual(['10 late']);
    expect(now).toBeNull();
    const low = axis(layout(12, 300), marks, null);
    expect(low.early.map((word) => word.text)).not.toContain('10 early');
    for (const count of [16, 24, 40]) {
      const far = axis(layout(count, 500, 67.6), marks, -22);
      expect(far.early.map((word) => word.text)).toEqual(['early']);
      expect(far.late.map((word) => word.text)).toEqual(['late']);
    }
  });

  it('shouldCallTheBlueStrokesNowAtTheirHeightAndNeverOnTheTimeOfTheLine', () => {
    const near = layout();
    expect(axis(near, [], -18).now!.y).toBeCloseTo(heightOf(near, -18));
    for (const minutes of [-60, -30, -18, -9, -3, 0, 2, 9, 40]) {
      const { early, late, now } = axis(near, [-20, -10, 10], minutes);
      const apart = [near.line, ...[...early, ...late].map((word) => word.y)];
      for (const y of apart) expect(Math.abs(now!.y - y)).toBeGreaterThanOrEqual(LETTER * 1.1);
    }
    const far = layout(16, 500, 67.6);
    const { now } = axis(far, [], -2);
    // Right of all columns nothing else stands, so that it goes with the strokes down to the line.
    expect(now!.y).toBeCloseTo(heightOf(far, -2));
    expect(now!.x).toBeGreaterThanOrEqual(columnX(far, 15) + far.columnWidth / 2);
    expect(now!.x + textWidth('now', far.letter)).toBeLessThanOrEqual(WIDTH);
  });
});

describe('labels beside each other', () => {
  const label = (x: number) => ({ x, width: 100 });

  it('should stay where they are while they do not touch', () => {
    expect(spread([label(200), label(400)], 0, 1000)).toEqual([200, 400]);
  });

  it('should move aside by halves, stay inside, and keep their order', () => {
    expect(spread([label(200), label(220)], 0, 1000)).toEqual([160, 260]);
    const many = [960, 970, 980, 990].map(label);
    const middles = spread(many, 0, 1000)!;
    expect(middles.at(-1)! + 50).toBeLessThanOrEqual(1000);
    middles.slice(1).forEach((x, i) => expect(x - middles[i]!).toBeGreaterThanOrEqual(99.99));
    expect(spread([label(10)], 0, 1000)).toEqual([50]);
  });

  it('should say that they have no room', () => {
    expect(spread([label(1), label(2)], 0, 199)).toBeNull();
    expect(spread([], 0, 10)).toEqual([]);
  });
});

describe('the picture of a room', () => {
  const now = TARGET - 20 * MINUTE;

  it('shouldStandAboveTheLineIfEarlyAndBelowIfLate', () => {
    const it = layout();
    expect(picture(room('ahead', -8), it, now).cy).toBeCloseTo(heightOf(it, -8));
    expect(picture(room('ahead', -8), it, now).cy).toBeLessThan(it.line);
    expect(picture(room('late', 9), it, now).cy).toBeGreaterThan(it.line);
  });

  it('shouldReachFromTheTenToTheNinetyPercentPoint', () => {
    const it = layout();
    const { cy, ry } = picture(room('ahead', -8, 5), it, now);
    expect(cy - ry).toBeCloseTo(heightOf(it, -13));
    expect(cy + ry).toBeCloseTo(heightOf(it, -3));
  });

  it('shouldBeADiscOnlyIfReadyAndAStrokeOnlyIfStarted', () => {
    const it = layout();
    const shape = (standing: Standing) => picture(room(standing, 0), it, now).shape;
    expect(shape('ready')).toBe('disc');
    expect(shape('started')).toBe('stroke');
    for (const standing of ['ahead', 'tight', 'late', 'stuck', 'unheard', 'agreed'] as const) {
      expect(shape(standing)).toBe('lens');
    }
    expect(shape('none')).toBe('none');
  });

  it('shouldPointOutOfTheScaleAndStayInsideIt', () => {
    const it = layout();
    const late = picture(room('stuck', 45, 10), it, now);
    expect(late.arrow).toBe('down');
    expect(late.cy + late.ry).toBeLessThan(it.bottom);
    const early = picture(room('ahead', -50, 5), it, now);
    expect(early.arrow).toBe('up');
    expect(early.cy - early.ry).toBeGreaterThan(it.top);
    expect(picture(room('late', LATE_MINUTES - 1), it, now).arrow).toBeNull();
  });

  it('shouldKeepWhatIsLateBelowTheLineHoweverLittleRoomThereIs', () => {
    for (const count of [16, 24, 40]) {
      const it = layout(count, 420, 67.6);
      const late = picture(room('late', 45, 30), it, now);
      expect(late.cy - late.ry).toBeGreaterThan(it.line);
      const early = picture(room('ahead', -45, 5), it, now);
      expect(early.cy + early.ry).toBeLessThan(it.line);
    }
  });

  it('shouldStayInsideTheScaleWhateverTheFigures', () => {
    const it = layout();
    for (let mid = -90; mid <= 90; mid += 7) {
      for (const half of [0, 3, 20, 70]) {
        const { cy, ry } = picture(room('late', mid, half), it, now);
        expect(cy - ry).toBeGreaterThanOrEqual(it.top - 0.01);
        expect(cy + ry).toBeLessThanOrEqual(it.bottom + 0.01);
        expect(ry).toBeGreaterThan(0);
      }
    }
  });

  it('shouldLetNowComeDownTowardsTheLineAndPointUpWhenItIsFar', () => {
    const it = layout();
    const at = (minutes: number) => picture(room('ahead', -2), it, TARGET + minutes * MINUTE);
    expect(at(-20).now).toBeLessThan(at(-10).now!);
    expect(at(-10).now).toBeLessThan(it.line);
    expect(at(0).now).toBeCloseTo(it.line);
    expect(at(-60)).toMatchObject({ now: it.top, nowAbove: true });
    expect(at(90).now).toBe(it.bottom);
  });

  it('shouldHaveNoNowInARoomThatHasStarted', () => {
    const it = layout();
    const started = room('started', 0, 0, { startedAt: TARGET + 6 * MINUTE });
    expect(picture(started, it, now)).toMatchObject({ now: null, shape: 'stroke' });
    expect(picture(started, it, now).cy).toBeCloseTo(heightOf(it, 6));
  });

  it('shouldMeasureEachRoomAgainstItsOwnTarget', () => {
    const it = layout();
    const own = room('agreed', 0, 4, { target: TARGET + 30 * MINUTE });
    // It could start at the others' target, thirty minutes before its own.
    expect(picture(own, it, now).cy).toBeLessThan(heightOf(it, -20));
    expect(picture(own, it, now).nowAbove).toBe(true);
  });

  it('shouldDrawOnlyTheNumberOfARoomWithoutFigures', () => {
    const it = layout();
    const bare = room('ahead', 0, 0, {
      could10: undefined,
      could50: undefined,
      could90: undefined,
    });
    expect(picture(bare, it, now).shape).toBe('none');
    expect(picture(bare, it, now).now).not.toBeNull();
  });

  it('shouldLieOnTheLineWhilePlanned', () => {
    const it = layout();
    expect(planned(room('ahead', -9), it)).toMatchObject({ shape: 'planned', cy: it.line });
    const empty = room('none', 0, 0, { target: undefined });
    expect(planned(empty, it).shape).toBe('none');
  });

  it('shouldDrawAStartBeyondTheScaleAsHighAsOthersWithItsMinutesAtTheArrow', () => {
    const it = layout();
    for (const [mid, beyond] of [
      [42, 42],
      [-45, -45],
      [200, 200],
    ] as const) {
      const drawn = picture(room('late', mid, 1), it, TARGET);
      expect(drawn.beyond).toBe(beyond);
      expect(drawn.ry * 2).toBeGreaterThanOrEqual(50);
      // The arrow and its number have room between the lens and the end of the scale.
      const end = mid > 0 ? it.bottom - (drawn.cy + drawn.ry) : drawn.cy - drawn.ry - it.top;
      expect(end).toBeGreaterThanOrEqual(LETTER + 20);
    }
    expect(picture(room('late', 12), it, TARGET).beyond).toBeNull();
  });

  it('shouldLetTheLensOfARoomWithoutAWordAlwaysReachTheLine', () => {
    const it = layout();
    for (const mid of [-25, -8, 0, 9, 18, 60]) {
      const drawn = picture(room('unheard', mid, 3), it, TARGET);
      expect(drawn.cy - drawn.ry).toBeLessThanOrEqual(it.line);
      expect(drawn.cy + drawn.ry).toBeGreaterThanOrEqual(it.line);
      // Nor are there minutes of it beyond the scale.
      expect(drawn).toMatchObject({ arrow: null, beyond: null });
    }
    const late = picture(room('late', 9, 3), it, TARGET);
    expect(late.cy - late.ry).toBeGreaterThan(it.line);
  });

  it('shouldNotDrawARoomBelowTheLineWhoseWordDoesNotSayThatItIsLate', () => {
    const it = layout();
    const drawn = picture(room('ahead', 33, 9), it, TARGET);
    expect(drawn).toMatchObject({ arrow: null, beyond: null });
    expect(drawn.cy - drawn.ry).toBeLessThanOrEqual(it.line);
    expect(picture(room('ahead', -45), it, TARGET)).toMatchObject({ arrow: 'up', beyond: -45 });
  });

  it('shouldSayTheSameMinutesAtTheArrowAsTheListDoes', () => {
    const it = layout();
    const late = room('late', 64, 1, { lateMinutes: 61 });
    expect(beyondWords(late, it, 64)).toBe('+61');
    expect(beyondWords({ ...late, lateMinutes: 240, orMore: true }, it, 240)).toBe('over 4 h');
    expect(beyondWords(room('ahead', -45), it, -45)).toBe('−45');
    expect(beyondWords(late, it, null)).toBe('');
  });

  it('shouldHaveAPlaceForTheMinutesOfALateStartOutsideTheScaleHoweverNarrowTheColumn', () => {
    const late = room('late', 64, 1, { lateMinutes: 61 });
    for (const [count, letter] of [
      [60, LETTER],
      [16, 67.6],
      [40, 67.6],
    ] as const) {
      const it = layout(count, 500, letter);
      expect(beyondWords(late, it, 64)).toBe('+61');
      expect(beyondWords({ ...late, lateMinutes: 240, orMore: true }, it, 240)).toBe('>4 h');
      expect(it.strip).toBeGreaterThanOrEqual(letter * 0.8);
      // The figure stands between the scale and the rooms' numbers.
      expect(it.bottom + it.strip).toBeLessThan(it.numberLine - it.numberSize * 0.7);
      expect(beyondWords(room('ahead', -45), it, -45)).toBe('');
      // Its arrow ends above the figure.
      const drawn = picture(late, it, now);
      expect(drawn.cy + drawn.ry + 22).toBeLessThanOrEqual(it.bottom + 0.01);
      expect(drawn.cy - drawn.ry).toBeGreaterThan(it.line);
    }
    expect(layout(12).strip).toBe(0);
  });
});
