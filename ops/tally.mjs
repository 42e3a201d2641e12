// Sums what the parts of ops/test wrote down, and prints the closing line.
// usage: node ops/tally.mjs FAILED_PARTS SECONDS
import { readdirSync, readFileSync, existsSync } from 'node:fs';
import { join } from 'node:path';

const [failedParts, seconds] = process.argv.slice(2).map(Number);
let passed = 0;
let failed = 0;
let skipped = 0;

for (const module of ['shared-model', 'server', 'ops']) {
  const folder = join(module, 'target', 'surefire-reports');
  if (!existsSync(folder)) continue;
  for (const file of readdirSync(folder).filter((f) => /^TEST-.*\.xml$/.test(f))) {
    const head = /<testsuite [^>]*>/.exec(readFileSync(join(folder, file), 'utf8'))?.[0] ?? '';
    const of = (name) => Number(new RegExp(` ${name}="(\\d+)"`).exec(head)?.[1] ?? 0);
    const bad = of('errors') + of('failures');
    failed += bad;
    skipped += of('skipped');
    passed += of('tests') - bad - of('skipped');
  }
}

for (const file of ['web/target/unit.json', 'target/browser.json']) {
  if (!existsSync(file)) continue;
  const of = JSON.parse(readFileSync(file, 'utf8'));
  passed += of.numPassedTests;
  failed += of.numFailedTests;
  skipped += of.numPendingTests ?? 0;
}

// A part can fail without a failed test: a build, a format, a browser that does not start.
if (failed === 0 && failedParts > 0) failed = failedParts;
const extra = skipped > 0 ? `, ${skipped} skipped` : '';
console.log(`${passed} passed, ${failed} failed${extra} (${seconds} s)`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
