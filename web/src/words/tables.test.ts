import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { BOTH, PAIRS } from './tables.ts';

const PAGES = join(import.meta.dirname, '..');

/** Codes of the wire and names of fields, which are no words for people. */
const CODES = new Set(['anaesthetist', 'porter', 'anaesthesia', 'centre', 'metres']);

/** What markup and styles are written in: these can't be told from a word on the screen. */
const MARKUP = new Set(['color', 'center', 'gray', 'program', 'meter', 'meters', 'cart', 'mold']);

/** Texts of a file: what stands in quotes and templates, without styles. */
function texts(file: string): string[] {
  const source = ts.createSourceFile(file, readFileSync(file, 'utf8'), ts.ScriptTarget.Latest);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) return;
    if (ts.isTaggedTemplateExpression(node) && node.tag.getText(source) === 'css') return;
    if (
      ts.isStringLiteral(node) ||
      ts.isNoSubstitutionTemplateLiteral(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddleOrTemplateTail(node)
    ) {
      found.push(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

function pageFiles(): string[] {
  return readdirSync(PAGES, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts') && !file.endsWith('.test.ts'))
    .filter((file) => !/^(words|generated|hands\/made)\//.test(file))
    .map((file) => join(PAGES, file));
}

describe('the tables of words that differ', () => {
  it('have both words under every key, and they differ', () => {
    for (const [key, { british, american }] of Object.entries(BOTH)) {
      expect(british.trim(), key).not.toBe('');
      expect(american.trim(), key).not.toBe('');
      expect(american, key).not.toBe(british);
    }
    for (const [british, american] of PAIRS) {
      expect(british, american).toMatch(/^[a-z]+$/);
      expect(american, british).toMatch(/^[a-z ]+$/);
      expect(american).not.toBe(british);
    }
  });

  it('have no word twice and none that would be changed again', () => {
    const british = PAIRS.map(([word]) => word);
    expect(new Set(british).size).toBe(british.length);
    const again = PAIRS.flatMap(([, american]) => american.split(' '));
    expect(again.filter((word) => british.includes(word))).toEqual([]);
  });

  it('hold every one of these words that a page says', () => {
    const words = PAIRS.flat().filter((word) => !MARKUP.has(word));
    const any = new RegExp(`\\b(?:${words.join('|')})\\b`, 'i');
    const outside = pageFiles().flatMap((file) =>
      texts(file)
        .filter((text) => !CODES.has(text) && !(text in BOTH))
        // The id of an item is not said either.
        .filter((text) => !/^[a-z]+\.[a-z-]+$/.test(text))
        // What is filled in is named, not said.
        .map((text) => text.replaceAll(/\{\w+\}/g, ''))
        .filter((text) => any.test(text))
        .map((text) => `${relative(PAGES, file)}: ${any.exec(text)![0]} in “${text.trim()}”`),
    );
    expect(outside).toEqual([]);
  });
});
