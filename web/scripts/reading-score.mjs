// Compares a reader's answers with the keys.
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';

/** Reads `answers.json` in the folder, prints what was right by the keys, returns the exit code. */
export async function score(folder, apart) {
  let answers;
  try {
    answers = JSON.parse(await readFile(join(folder, 'answers.json'), 'utf8'));
  } catch (error) {
    console.error(`${join(folder, 'answers.json')}: ${error.message}. The task's page makes it.`);
    return 2;
  }
  let wrong = 0;
  console.log('| Picture | Late rooms found | Taken for late | Why, right | Seconds |');
  console.log('|---|---|---|---|---|');
  for (const [name, answer] of Object.entries(answers)) {
    const key = JSON.parse(await readFile(join(apart, `${name}.json`), 'utf8'));
    const { late } = key;
    const found = late.filter((room) => answer.late.includes(room));
    const taken = answer.late.filter((room) => !late.includes(room));
    const right = key.needs.filter((n) => says(answer.why[n.room] ?? '', `${n.words} ${n.taken}`));
    const missed = late.filter((room) => !found.includes(room));
    const misread = key.needs.filter((n) => !right.includes(n)).map((n) => n.room);
    wrong += missed.length + taken.length + misread.length;
    console.log(
      `| ${name} | ${found.length} of ${late.length}${list(missed, 'missed')} | ` +
        `${taken.length}${list(taken, 'rooms')} | ` +
        `${right.length} of ${key.needs.length}${list(misread, 'wrong')} | ${answer.seconds ?? '-'} |`,
    );
  }
  return wrong === 0 ? 0 : 1;
}

function list(rooms, word) {
  return rooms.length === 0 ? '' : ` (${word} ${rooms.join(', ')})`;
}

/** Right if something was said and each longer word of it stands in the wall's words. */
function says(answer, words) {
  const of = (text) => text.toLowerCase().match(/[a-z]{4,}/g) ?? [];
  const said = of(answer);
  const there = new Set(of(words));
  return said.length > 0 && said.every((word) => there.has(word));
}
