import { describe, expect, test } from 'vitest';
import { parseTemplate } from './template.ts';
import { isMessageCode, render } from './render.ts';

describe('a template', () => {
  test('is cut into text, figures and plurals', () => {
    expect(parseTemplate('{n:plural|# pump|# pumps} at {level:level}.')).toEqual([
      { name: 'n', forms: ['# pump', '# pumps'] }, ' at ', { name: 'level', kind: 'level' }, '.',
    ]);
  });

  test.each(['{n}', '{n:plural}', '{n:plural|a}', '{n:plural|a|b|c}', '{n:level|x}', '{', 'a } b', '{n:level'])('%s is refused', (template) => {
    expect(() => parseTemplate(template)).toThrow(SyntaxError);
  });
});

describe('render', () => {
  test('speaks the reader\'s language and units', () => {
    expect(render('en', 'us', 'ui.days', { n: 1 })).toBe('1 day');
    expect(render('en', 'us', 'ui.days', { n: 12 })).toBe('12 days');
    expect(render('es', 'metric', 'ui.days', { n: 1 })).toBe('1 día');
    expect(render('es', 'metric', 'ui.days', { n: 0 })).toBe('0 días');
  });

  test('refuses an unknown code and a missing parameter', () => {
    expect(() => render('en', 'us', 'ui.nothing')).toThrow(/no message/);
    expect(() => render('en', 'us', 'ui.days')).toThrow(/needs the parameter n/);
    expect(isMessageCode('toString')).toBe(false);
  });
});
