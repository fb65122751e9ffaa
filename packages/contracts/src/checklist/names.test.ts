import { expect, test } from 'vitest';
import { sameName, saysWhy } from './names.ts';

test.each([['Rosa Delgado', 'rosa delgado'], ['Rosa Delgado', 'R. Delgado'], ['Rosa', 'Rosa Delgado'], ['José Peña', 'JOSE PENA'], ['-', 'Anybody']])('"%s" and "%s" may be one person', (a, b) => expect([sameName(a, b), sameName(b, a)]).toEqual([true, true]));
test.each([['Rosa Delgado', 'Cal Ito'], ['Test crew', 'Test owner'], ['A. Signer', 'B. Signer']])('"%s" and "%s" are two people', (a, b) => expect([sameName(a, b), sameName(b, a)]).toEqual([false, false]));
test.each([['n/a', false], ['none', false], ['no no', false], ['.... .... ....', false], ['notneededhere', false], ['There is no pump', true], ['No hay bomba aquí', true]])('whether "%s" says why: %s', (reason, says) => expect(saysWhy(reason)).toBe(says));
