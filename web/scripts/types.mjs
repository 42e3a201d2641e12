// Copies the types that Maven makes from the Java records of package sunup.wire.
import { copyFileSync, existsSync, mkdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const from = fileURLToPath(
  new URL('../../shared-model/target/typescript/wire.ts', import.meta.url),
);
const to = fileURLToPath(new URL('../src/generated/wire.ts', import.meta.url));
if (!existsSync(from)) {
  console.error(
    'The generated types are missing. Run: mvn -B -ntp process-classes -pl shared-model',
  );
  process.exit(1);
}
mkdirSync(new URL('../src/generated/', import.meta.url), { recursive: true });
copyFileSync(from, to);
