import { readFileSync } from 'node:fs';
import { hazards, buildChecklist, DesignDocumentSchema, itemTemplates, locateRules, measureCode, missingText, plateCode } from '@yardfall/contracts';
import { isMessageCode, languages, messages, render, unitSystems } from '@yardfall/text';
import { describe, expect, test } from 'vitest';

const file = new URL('../../prisma/seed/sites/tern-hollow.json', import.meta.url);
const items = await buildChecklist(DesignDocumentSchema.parse(JSON.parse(readFileSync(file, 'utf8'))));

/** The wordings of an item: the one for all, and those that name what a design has. */
const wordingsOf = (id: string) => [...new Set(Object.keys(messages).flatMap((code) => new RegExp(`^checklists\\.${id}([A-Z]\\w*)?\\.`).exec(code)?.map((part) => part ?? '')[1] ?? []))];

describe('every checklist item', () => {
  test('has a wording for all designs and more for some', () => {
    expect(wordingsOf('J4').sort()).toEqual(['', 'Grate', 'Inlets', 'Roof']);
    for (const { id } of itemTemplates) expect(wordingsOf(id), id).toContain('');
  });

  test('says what, when it is right and why, in both languages and unit systems, from its own parameters', () => {
    for (const template of itemTemplates) {
      for (const wording of wordingsOf(template.id)) {
        for (const field of ['what', 'acceptance', 'whyCrew', 'whyHome', ...(template.minPhotos > 0 ? ['photo'] : [])]) {
          for (const language of languages) {
            for (const units of unitSystems) expect(render(language, units, `checklists.${template.id}${wording}.${field}`, { line: 'checklists.private.septic', ...template.params }).length).toBeGreaterThan(3);
          }
        }
      }
    }
  });

  test('writes no figure that is not a parameter', () => {
    const texts = Object.entries(messages).filter(([code]) => /^checklists\.[A-J]\d/.test(code));
    expect(texts.length).toBeGreaterThan(290);
    const bare = texts.filter(([, message]) => /\d/.test(`${message.en} ${message.es}`.replace(/\{[^}]*\}/g, '').replaceAll('811', '')));
    expect(bare.map(([code]) => code)).toEqual([]);
  });

  test('has words for its measures and for whatever can be missing', () => {
    for (const { requirement } of items) {
      for (const { name } of requirement.measures) {
        expect(isMessageCode(measureCode(name)), name).toBe(true);
        for (const mark of [`value:${name}`, `outside:${name}`]) for (const said of [missingText(mark), missingText(mark, requirement)]) expect(render('es', 'us', said.code, said.params)).not.toBe('');
      }
      for (const signer of [...requirement.signers, 'second']) expect(isMessageCode(`checklists.signer.${signer}`)).toBe(true);
    }
    for (const mark of ['tick', 'photo:2', 'document', 'correction', 'choice']) expect(render('en', 'us', missingText(mark).code, missingText(mark).params)).not.toBe('');
  });
});

test('every hazard of the work has a caution with its source, short, in both languages', () => {
  for (const hazard of hazards) {
    for (const language of languages) {
      expect(render(language, 'us', `safety.${hazard}`, {}).length).toBeLessThan(260);
      expect(render(language, 'us', `safety.${hazard}.source`, {})).not.toBe('');
    }
  }
});

test('every number of a plate that is asked for has a name', () => {
  for (const { requirement } of items) for (const name of requirement.texts ?? []) expect(isMessageCode(plateCode(name)), name).toBe(true);
});

test('every locate rule has words for what to do without an answer', () => {
  for (const { noAnswer } of locateRules) expect(isMessageCode(`locates.noAnswer.${noAnswer}`)).toBe(true);
});
