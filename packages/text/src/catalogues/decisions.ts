import { catalogue } from '../catalogue.ts';

/** What moves a freeboard most and what hangs on it; storms kept out; what-ifs; why a cheaper design is not enough. */
export const decisions = catalogue({
  'decisions.input.rain': { en: 'Rain', es: 'Lluvia' },
  'decisions.input.coefficient': { en: 'Runoff of {name:text}', es: 'Escurrimiento de {name:text}' },
  'decisions.input.sillShot': { en: 'Shot of the sill {name:text}', es: 'Lectura del umbral {name:text}' },
  'decisions.input.pondShot': { en: 'Shot of the low spot {name:text}', es: 'Lectura del punto bajo {name:text}' },
  'decisions.input.rimShot': { en: 'Shot of the rim of {name:text}', es: 'Lectura del borde de {name:text}' },
  'decisions.input.basinShot': { en: 'Float level in {name:text}', es: 'Nivel del flotador en {name:text}' },
  'decisions.input.invertShot': { en: 'Shots of the pipe inverts', es: 'Lecturas de los fondos de tubería' },
  'decisions.input.outletShot': { en: 'Shot of the outlet {name:text}', es: 'Lectura de la salida {name:text}' },
  'decisions.input.storage': { en: 'Water that the low spot holds', es: 'Agua que guarda el punto bajo' },
  'decisions.input.pump': { en: 'Flow of the pump', es: 'Caudal de la bomba' },
  'decisions.input.friction': { en: 'Friction in the discharge line', es: 'Fricción en la línea de descarga' },
  'decisions.input.loss': { en: 'What the ground and the old drain take', es: 'Lo que toman el suelo y el drenaje viejo' },
  'decisions.swing': { en: '{input:text}: from {low:height} to {high:height} of freeboard.', es: '{input:text}: de {low:height} a {high:height} de margen.' },
  'decisions.decides.gravity': {
    en: '{input:text}: measure it again. It decides pump or no pump.',
    es: '{input:text}: mídala otra vez. Decide si hace falta bomba.',
  },
  'decisions.decides.need': {
    en: '{input:text}: measure it again. It decides if the site floods without a system.',
    es: '{input:text}: mídala otra vez. Decide si el sitio se inunda sin sistema.',
  },
  'decisions.decides.freeboard': {
    en: '{input:text}: find out more. It decides if the freeboard is enough ({low:height} to {high:height}).',
    es: '{input:text}: averigüe más. Decide si el margen alcanza ({low:height} a {high:height}).',
  },
  'decisions.protected.upTo': {
    en: 'Keeps out every storm up to the {returnPeriod:count}-year one, with {lower:height} to spare.',
    es: 'Deja fuera toda tormenta hasta la de {returnPeriod:count} años, con {lower:height} de sobra.',
  },
  'decisions.protected.orMore': {
    en: 'Keeps out the {returnPeriod:count}-year storm or more; the rain table ends there.',
    es: 'Deja fuera la tormenta de {returnPeriod:count} años o más; ahí termina la tabla de lluvia.',
  },
  'decisions.protected.none': {
    en: 'Lets in even the {failsAt:count}-year storm, the smallest of the rain table.',
    es: 'Deja entrar incluso la tormenta de {failsAt:count} años, la menor de la tabla.',
  },
  'decisions.whatIf.noSystem': { en: 'No system', es: 'Sin sistema' },
  'decisions.whatIf.pumpFailed': { en: '{name:text} does not start', es: '{name:text} no arranca' },
  'decisions.whatIf.powerOut': { en: 'Power out for {duration:minutes}, at the worst time', es: 'Sin luz por {duration:minutes}, en el peor momento' },
  'decisions.whatIf.grateHalfBlocked': { en: 'Grates half blocked', es: 'Rejillas medio tapadas' },
  'decisions.whatIf.emitterHalfBlocked': { en: '{name:text} half blocked', es: '{name:text} medio tapado' },
  'decisions.whatIf.gutterOverflowing': { en: 'Gutters overflow or leaders are blocked', es: 'Canaletas desbordadas o bajantes tapadas' },
  'decisions.whatIf.outletSaturated': { en: 'The yard is flooded and the ground is full', es: 'El patio inundado y el suelo lleno' },
  'decisions.whatIf.checkValveMissing': { en: '{name:text} is missing', es: 'Falta {name:text}' },
  'decisions.whatIf.dry': { en: '{freeboard:height} below {sill:text}', es: '{freeboard:height} bajo {sill:text}' },
  'decisions.whatIf.over': { en: '{over:height} over {sill:text} for {duration:minutes}', es: '{over:height} sobre {sill:text} por {duration:minutes}' },
  'decisions.cheaper.floods': {
    en: 'The next cheaper one fails by {shortBy:height} in the {returnPeriod:count}-year storm.',
    es: 'El siguiente más barato falla por {shortBy:height} en la tormenta de {returnPeriod:count} años.',
  },
  'decisions.cheaper.short': {
    en: 'The next cheaper one misses the freeboard by {shortBy:height} in the {returnPeriod:count}-year storm.',
    es: 'Al siguiente más barato le faltan {shortBy:height} de margen en la tormenta de {returnPeriod:count} años.',
  },
  'decisions.cheaper.less': {
    en: 'The next cheaper one spares {shortBy:height} less in the {returnPeriod:count}-year storm.',
    es: 'El siguiente más barato deja {shortBy:height} menos en la tormenta de {returnPeriod:count} años.',
  },
  'decisions.cheaper.backup': { en: 'The next cheaper one has less backup.', es: 'El siguiente más barato tiene menos respaldo.' },
  'decisions.cheaper.stops': { en: 'Cheaper ones may not be built: check {check:text} stops them.', es: 'Los más baratos no se pueden construir: los detiene la revisión {check:text}.' },
  'decisions.cheaper.none': { en: 'Nothing cheaper was allowed.', es: 'No se permitió nada más barato.' },
});
