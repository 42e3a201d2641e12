import { describe, expect, it } from 'vitest';
import { inSuite, suiteIn } from './suite.ts';

describe('the suite of an address', () => {
  it('is what it names, or none', () => {
    expect(suiteIn('?inches=55&suite=east%202')).toBe('east 2');
    expect(suiteIn('?suite=')).toBeUndefined();
    expect(suiteIn('')).toBeUndefined();
  });

  it('goes along in what the page asks and opens', () => {
    expect(inSuite('/desk', 'east 2')).toBe('/desk?suite=east%202');
    expect(inSuite('/desk?date=2026-11-26', 'east')).toBe('/desk?date=2026-11-26&suite=east');
    expect(inSuite('/desk', undefined)).toBe('/desk');
  });
});
