import { html, nothing, type TemplateResult } from 'lit';
import { timeOn } from '../hands/clock.ts';
import { PAD_KEYS, padKeys } from '../hands/pad.ts';
import { style } from '../words/index.ts';
import { frame } from './frame.ts';
import type { Station } from './main.ts';
import type { Side } from './sides.ts';

/** Four digits need no point: the last key moves up. */
const DIGITS = [...PAD_KEYS.filter((key) => /[1-9]/.test(key)), 'back', '0'];

/** A clock of 12 hours has two keys more: which half of the day is always said. */
const HALVES = ['am', 'pm'];

/** What is typed after a key more. */
export function typedTime(typed: string, key: string): string {
  const [digits = '', half] = typed.split(' ');
  if (key === 'back') return half === undefined ? digits.slice(0, -1) : digits;
  if (HALVES.includes(key)) return `${digits} ${key}`;
  return half === undefined ? (digits + key).slice(0, 4) : typed;
}

/** When it was done, for what was written down while the board was down. */
export function paperSheet(at: Station, paper: Extract<Side, { kind: 'paper' }>): TemplateResult {
  const press = (key: string) => {
    at.show({ kind: 'paper', typed: typedTime(paper.typed, key), wrong: '' });
  };
  const twelve = style().clock === 12;
  const use = () => {
    const doneAt = timeOn(at.suite?.date ?? '', paper.typed, at.zone);
    const wrong =
      doneAt === undefined
        ? twelve
          ? 'Type the time of day, then am or pm, like 650 am.'
          : 'Type the time of day with four digits, like 0650.'
        : doneAt > at.now
          ? 'That is still to come. What is done now needs no time.'
          : '';
    if (wrong === '') {
      at.enterFromPaper(doneAt);
    } else {
      at.show({ ...paper, wrong });
    }
  };
  return frame(
    at,
    'Enter from paper: when was it done?',
    html`<div class="pad">
      <p class="shown" aria-live="polite"><span>${paper.typed || ' '}</span><small>time</small></p>
      <p class="dim range">then touch what was done then; the board keeps both times</p>
      ${padKeys(press, { keys: twelve ? [...DIGITS, ...HALVES] : DIGITS })}
      ${paper.wrong ? html`<p class="wrong" role="alert">${paper.wrong}</p>` : nothing}
      <button class="main" @click=${use}>Done at this time</button>
    </div>`,
  );
}
