import { catalogue } from '../catalogue.ts';

export const proof = catalogue({
  'proof.title': { en: 'Pump-down', es: 'Vaciado con la bomba' },
  'proof.verdict.pass': { en: 'Passes: {measured:fineFlow} measured, {predicted:fineFlow} expected', es: 'Pasa: {measured:fineFlow} medidos, {predicted:fineFlow} esperados' },
  'proof.verdict.explain': { en: 'Explain: {measured:fineFlow} measured, {predicted:fineFlow} expected', es: 'Explique: {measured:fineFlow} medidos, {predicted:fineFlow} esperados' },
  'proof.verdict.fail': { en: 'Fails: {measured:fineFlow} measured, {predicted:fineFlow} expected', es: 'Falla: {measured:fineFlow} medidos, {predicted:fineFlow} esperados' },
  'proof.verdict.repeat': {
    en: 'Measure again, {runs:count} full runs over a bigger drop: uncertain by {uncertainty:percent}',
    es: 'Mida otra vez, {runs:count} vueltas llenas con más bajada: incierto en {uncertainty:percent}',
  },
  'proof.run': { en: 'Run {n:count}', es: 'Vuelta {n:count}' },
  'proof.upper': { en: 'Upper mark', es: 'Marca de arriba' },
  'proof.lower': { en: 'Lower mark', es: 'Marca de abajo' },
  'proof.volume': { en: 'Water between the marks', es: 'Agua entre las marcas' },
  'proof.seconds': { en: 'Time', es: 'Tiempo' },
  'proof.emptyLine': { en: 'The line was empty', es: 'La línea estaba vacía' },
  'proof.uncertainty': { en: 'Uncertain by {uncertainty:percent}', es: 'Incierto en {uncertainty:percent}' },
  'proof.hold.explain': { en: 'The pump-down of {pump:text} is to be explained', es: 'Hay que explicar el vaciado de {pump:text}' },
  'proof.hold.fail': { en: 'The pump-down of {pump:text} failed', es: 'El vaciado de {pump:text} falló' },
  'proof.hold.repeat': { en: 'The pump-down of {pump:text} is to be measured again', es: 'Hay que medir otra vez el vaciado de {pump:text}' },
});
