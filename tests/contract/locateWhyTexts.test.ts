import { unconfirmed } from '@yardfall/contracts';
import { languages, render } from '@yardfall/text';
import { expect, test } from 'vitest';

test.each(Object.entries(unconfirmed))('what is not confirmed of %s is said in both languages', (state, why) => {
  const [english, ...others] = languages.map((language) => render(language, 'us', `locates.rules.why.${state}`));
  expect(english).toBe(why);
  for (const other of others) expect(other).not.toBe(english);
});
