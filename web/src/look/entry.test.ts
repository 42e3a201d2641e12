import { describe, expect, it } from 'vitest';
import { broughtBack } from '../live/index.ts';
import { elsewhere, firstLinkIn, inGroups } from './entry.ts';

describe('the page of a new screen', () => {
  it('shouldShowACodeInGroupsThatCanBeReadAloud', () => {
    expect(inGroups('BCDF2346')).toBe('BCDF 2346');
  });

  it('shouldFindTheConsolesLinkOnlyWhereItIsOne', () => {
    expect(firstLinkIn('#first=AbC-_0123456789')).toBe('AbC-_0123456789');
    expect(firstLinkIn('#first=a b')).toBeUndefined();
    expect(firstLinkIn('')).toBeUndefined();
  });

  it('shouldTakeWhatCameBackFromTheIdentityProviderAndNothingElse', () => {
    expect(broughtBack('#signed-in?code=a%2Bb&state=s&iss=https%3A%2F%2Fid')).toEqual({
      code: 'a+b',
      state: 's',
      iss: 'https://id',
    });
    expect(broughtBack('#signed-in?error=access_denied&state=s')).toEqual({ code: '', state: 's' });
    expect(broughtBack('#first=AbC')).toBeUndefined();
  });

  it('shouldGoToItsOwnPageUnlessItLooksAtTheWall', () => {
    expect(elsewhere('station', '/station/7', '/station/7')).toBe(false);
    expect(elsewhere('station', '/station/8', '/station/7')).toBe(true);
    expect(elsewhere('desk', '/desk/', '/desk')).toBe(false);
    expect(elsewhere('wall', '/wall', '/station/7')).toBe(false);
    expect(elsewhere('desk', '/paper', '/desk')).toBe(false);
    expect(elsewhere('desk', '/sheets', '/desk')).toBe(false);
    expect(elsewhere('desk', '/review', '/desk')).toBe(false);
    expect(elsewhere('desk', '/paper', '/holding')).toBe(true);
    expect(elsewhere('desk', '/sheets', '/holding')).toBe(true);
  });
});
