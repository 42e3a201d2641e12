// The page of the reading task: one picture after the other, at the size that the wall has at its
// distance, with the time that the answer took.

/** Metres from the eye to an ordinary screen. */
const ARM = 0.6;

/**
 * @param names of the pictures, with the diagonals of their walls
 * @param metres from the wall
 * @param wide width over diagonal
 */
export function taskPage(names, metres, wide) {
  const pictures = names.map(({ name, inches }) => ({
    name,
    cm: ((inches * 2.54 * wide * ARM) / metres).toFixed(1),
  }));
  return `<!doctype html>
<html lang="en">
  <meta charset="utf-8" />
  <title>Which rooms are late, and why?</title>
  <style>
    body { font: 18px/1.4 sans-serif; margin: 2em; max-width: 46em; }
    input, textarea, button { font: inherit; display: block; width: 100%; margin: 0.3em 0 1em; }
  </style>
  <h1>Which rooms are late, and why?</h1>
  <p id="about">
    Sit ${ARM * 100} cm from the screen; the page must be shown at its true size (a line of 10 cm:
    <span style="display:inline-block;width:10cm;border-top:2px solid"></span>). Each picture is a
    wall seen from ${metres} m. The clock runs from the moment you see it.
  </p>
  <div id="task"></div>
  <button id="next">Show the first picture</button>
  <script type="module">
    const pictures = ${JSON.stringify(pictures)};
    const answers = {};
    let at = -1;
    let began = 0;
    const task = document.getElementById('task');
    const next = document.getElementById('next');
    next.addEventListener('click', () => {
      if (at >= 0) keep();
      at += 1;
      if (at === pictures.length) return finish();
      const { name, cm } = pictures[at];
      task.innerHTML =
        '<img alt="" style="width:' + cm + 'cm" src="pictures/' + name + '.png">' +
        '<label>Rooms that are late or stuck<input id="late" placeholder="3, 7"></label>' +
        '<label>Why, as the wall says it, a line each' +
        '<textarea id="why" rows="6" placeholder="3 surgeon not seen"></textarea></label>';
      next.textContent = 'Done';
      began = performance.now();
    });
    function keep() {
      const why = {};
      for (const line of document.getElementById('why').value.split('\\n')) {
        const found = /^\\s*(\\S+)\\s+(.+)$/.exec(line);
        if (found) why[found[1]] = found[2];
      }
      answers[pictures[at].name] = {
        late: document.getElementById('late').value.split(/[\\s,]+/).filter((r) => r !== ''),
        why,
        seconds: Math.round((performance.now() - began) / 1000),
      };
    }
    function finish() {
      task.innerHTML = '<p>Put the file beside this page and run ops/reading --score.</p>';
      next.remove();
      const link = document.createElement('a');
      link.download = 'answers.json';
      link.href = URL.createObjectURL(new Blob([JSON.stringify(answers, null, 2)]));
      link.textContent = 'answers.json';
      task.append(link);
    }
  </script>
</html>
`;
}

/** The same task on paper, for a reader who looks at the files one by one. */
export function questions(names, metres) {
  return `# Which rooms are late, and why?

Each picture is a wall seen from ${metres} m. \`pictures\` has them as the screen shows them, \`seen\` with
one pixel for each minute of arc: no more than normal sight has of it from there. Look at \`seen\` first.
For each picture say: which rooms are late or stuck; for each line under _needs someone_ why, as the
wall says it, and who has taken it; how many seconds it took. Look at nothing else of this project.

Answer as \`answers.json\`:

{"NAME": {"late": ["3", "7"], "why": {"3": "surgeon not seen"}, "seconds": 20}}

${names.map(({ name, inches }) => `- ${name} (${inches} inches)`).join('\n')}
`;
}
