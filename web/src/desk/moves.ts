import { html, nothing, type TemplateResult } from 'lit';
import type { CommandUnion, IdeaPart, MovePart } from '../generated/wire.ts';
import { gainWords, isBack, moveAnswers, moveWords, savedWords } from '../hands/moves.ts';
import type { Desk } from './main.ts';

/** Those that wait for somebody first, then what is being done, then what is over. */
const ORDER: readonly MovePart['state'][] = [
  'asked',
  'accepted',
  'not-safe',
  'declined',
  'done',
  'withdrawn',
];

/** What was asked and what may help. */
export function movesPanel(at: Desk): TemplateResult {
  const asked = [...at.list('move')].sort(
    // What nobody answered stands first by its time: the longest ago.
    (a, b) => ORDER.indexOf(a.state) - ORDER.indexOf(b.state) || a.askedAt - b.askedAt,
  );
  const ideas = [...at.list('idea')].sort((a, b) => a.rank - b.rank);
  return html`${
      asked.length === 0
        ? nothing
        : html`<h2>Asked</h2>
            ${asked.map((m) => askedCard(at, m))}`
    }
    <h2>May still help</h2>
    ${ideas.map((i) => ideaCard(at, i))}
    <p class="dim">${searched(at, ideas.length)}</p>`;
}

/** What stands behind the list; nothing found is said as such. */
function searched(at: Desk, found: number): string {
  const search = at.list('ideas')[0];
  if (search === undefined) {
    return 'No moves were worked out yet: they follow the first figures of an open morning.';
  }
  const tried =
    search.screened < search.possible
      ? `${search.screened} of ${search.possible} possible moves tried`
      : `${search.possible} possible moves tried`;
  const none = found === 0 ? 'Nothing that would surely save 2 minutes. ' : '';
  return `${none}As of ${at.hhmm(search.of)}: ${tried}${
    search.confirmed > 0 ? `, ${search.confirmed} of them again in ${search.trials} trials` : ''
  }. Each figure is of that move alone; they do not add.`;
}

function ideaCard(at: Desk, idea: IdeaPart): TemplateResult {
  const gains = gainWords(idea);
  const command: CommandUnion = {
    type: 'ask-move',
    move: idea.move,
    ...(idea.role === undefined ? {} : { role: idea.role }),
    ...(idea.person === undefined ? {} : { person: idea.person }),
  };
  const going = at.said.pending(idea.key);
  return html`<div class="card">
    <p>
      ${idea.words}<small>${savedWords(idea)}${gains === '' ? '' : html`<br />${gains}`}</small>
    </p>
    <div class="do">
      <button
        ?disabled=${going !== undefined}
        aria-label="Ask ${idea.who}: ${idea.words}"
        @click=${() => at.tell(`asked ${idea.who}: ${idea.words}`, command, { about: [idea.key] })}
      >
        ${going === undefined ? `Ask ${idea.who}` : 'sent, not yet on the board'}
      </button>
      ${
        idea.room === undefined
          ? nothing
          : html`<button
              aria-label="Open room ${idea.room}"
              @click=${() => at.openRoom(idea.room!)}
            >
              Open
            </button>`
      }
    </div>
  </div>`;
}

function askedCard(at: Desk, move: MovePart): TemplateResult {
  const open = move.state === 'asked' || move.state === 'accepted';
  const asked = isBack(move, at.now) ? 'late' : 'tight';
  const kind = move.state === 'asked' ? asked : move.state === 'accepted' ? 'on-it' : '';
  return html`<div class="card ${kind}">
    <p>${move.words}<small>${moveWords(move, (t) => at.hhmm(t), at.now)}</small></p>
    <div class="do">
      ${moveAnswers(move).map(
        (a) =>
          html`<button
            aria-label="${a.word}, as told by telephone: ${move.words}"
            @click=${() =>
              at.tell(`${a.word.toLowerCase()}: ${move.words}`, a.command, { about: [move.key] })}
          >
            ${a.word}
          </button>`,
      )}
      ${
        open
          ? html`<button
              aria-label="Do not ask any more: ${move.words}"
              @click=${() =>
                at.tell(`not asked any more: ${move.words}`, {
                  type: 'withdraw-move',
                  move: move.id,
                })}
            >
              Don’t ask
            </button>`
          : nothing
      }
    </div>
  </div>`;
}
