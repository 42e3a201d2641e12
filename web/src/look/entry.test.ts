import { describe, expect, it } from 'vitest';
import { type BroughtBack, type Live, broughtBack } from '../live/index.ts';
import { type SunupEntry, elsewhere, entryOver, firstLinkIn, inGroups } from './entry.ts';

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

  it('shouldGiveTheSameBackAgainWhereTooManyAskedAtOnce', async () => {
    location.hash = '#signed-in?code=a&state=s';
    const given: BroughtBack[] = [];
    const live = Object.assign(new EventTarget(), {
      state: { entry: { pairing: { code: 'BCDF2346' } } },
      entry: {
        signedIn: async (back: BroughtBack) => {
          given.push(back);
          return { done: given.length > 1, words: 'Too many sign-ons' };
        },
      },
    }) as unknown as Live;
    const page: SunupEntry = entryOver(live, 'wall');
    live.dispatchEvent(new Event('state'));
    const buttons = () => [...page.renderRoot.querySelectorAll('[role=alertdialog] button')];
    await expect.poll(() => buttons().length).toBe(2);
    (buttons()[0] as HTMLElement).click();
    await expect.poll(() => buttons().length).toBe(0);
    expect(given).toEqual([
      { code: 'a', state: 's' },
      { code: 'a', state: 's' },
    ]);
    page.remove();
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
