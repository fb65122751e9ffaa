import { catalogue } from '../catalogue.ts';

/**
 * What a calculation says, in sentences made from its results. Every figure is a placeholder that points into the
 * evaluation or the document; a test finds no other figure in what is written.
 */
export const explain = catalogue({
  'explain.heading.summary': { en: 'Summary', es: 'Resumen' },
  'explain.heading.findings': { en: 'Findings', es: 'Hallazgos' },
  'explain.heading.words': { en: 'In words', es: 'En palabras' },
  'explain.summary.version': { en: 'Method version {version:text}, document {sha256:text}', es: 'Versión de métodos {version:text}, documento {sha256:text}' },
  'explain.summary.counts': {
    en: 'Refer {refer:count}, stop {stop:count}, caution {caution:count}, note {note:count}',
    es: 'Referir {refer:count}, alto {stop:count}, precaución {caution:count}, nota {note:count}',
  },
  'explain.severity.refer': { en: 'REFER', es: 'REFERIR' },
  'explain.severity.stop': { en: 'STOP', es: 'ALTO' },
  'explain.severity.caution': { en: 'CAUTION', es: 'PRECAUCIÓN' },
  'explain.severity.note': { en: 'NOTE', es: 'NOTA' },
  'explain.title': { en: '{title:text}: what the calculation says.', es: '{title:text}: lo que dice el cálculo.' },
  'explain.storm': {
    en: 'The plan is for the storm that comes about once in {years:count} years, and is tried with the one of {check:count} years. The rain is from the table "{table:text}".',
    es: 'El plan es para la tormenta que llega más o menos una vez en {years:count} años, y se prueba con la de {check:count} años. La lluvia es de la tabla "{table:text}".',
  },
  'explain.refer.lead': {
    en: 'This site goes to a licensed engineer before anything is designed. Nothing below is a design.',
    es: 'Este sitio va a un ingeniero con licencia antes de diseñar nada. Nada de lo que sigue es un diseño.',
  },
  'explain.refer.seen': { en: 'Seen on site: {note:text}', es: 'Visto en el sitio: {note:text}' },
  'explain.refer.bigCatchment': {
    en: 'The ground that drains here, {area:area}, is more than {pass:area}.', es: 'El terreno que drena aquí, {area:area}, es más de {pass:area}.',
  },
  'explain.refer.bigFlow': { en: 'The peak flow, {flow:flow}, is more than {pass:flow}.', es: 'El caudal máximo, {flow:flow}, es más de {pass:flow}.' },
  'explain.refer.other': { en: 'A check hands this site to others; it is said with the findings.', es: 'Una revisión pasa este sitio a otros; se dice en los hallazgos.' },
  'explain.now.dry': { en: 'No rain that is counted runs to {spot:text} as the site is.', es: 'Como está el sitio, ninguna lluvia contada corre a {spot:text}.' },
  'explain.now.flow': {
    en: 'As the site is, the wettest minutes of the storm of {years:count} years send {flow:flow} to {spot:text}.',
    es: 'Como está el sitio, los minutos más fuertes de la tormenta de {years:count} años mandan {flow:flow} a {spot:text}.',
  },
  'explain.now.volume': { en: '{spot:text} holds {volume:volume} before water reaches the sill or its rim.', es: 'En {spot:text} caben {volume:volume} antes de llegar al umbral o al borde.' },
  'explain.now.over': {
    en: 'Without a system, water would stand over {sill:text} for {time:clockMinutes}. It would come in.',
    es: 'Sin un sistema, el agua estaría sobre {sill:text} durante {time:clockMinutes}. Entraría.',
  },
  'explain.now.below': { en: 'Without a system, the water stops {height:height} below {sill:text}.', es: 'Sin un sistema, el agua queda {height:height} bajo {sill:text}.' },
  'explain.oldDrain': {
    en: '{drain:text} took {volume:volume} of hose water before it backed up. That fills about {length:length} of such pipe.',
    es: '{drain:text} tomó {volume:volume} de agua de manguera antes de rebosar. Eso llena unos {length:length} de ese tubo.',
  },
  'explain.gravity.short': {
    en: 'Water runs only downhill. {outlet:text} stands at {level:level}, and gravity needs {needed:level} there: it is {shortfall:height} too high.',
    es: 'El agua solo corre hacia abajo. {outlet:text} está a {level:level}, y la gravedad necesita {needed:level} ahí: queda {shortfall:height} muy alto.',
  },
  'explain.gravity.thin': {
    en: '{outlet:text} stands at {level:level}, and gravity needs {needed:level} there: too little is left for a margin.',
    es: '{outlet:text} está a {level:level}, y la gravedad necesita {needed:level} ahí: queda muy poco margen.',
  },
  'explain.gravity.enough': {
    en: '{outlet:text} stands at {level:level}, and gravity needs {needed:level} there: the water can run by itself.',
    es: '{outlet:text} está a {level:level}, y la gravedad necesita {needed:level} ahí: el agua puede correr sola.',
  },
  'explain.gutter': {
    en: '{gutter:text} gets {demand:flow} from the roof. It carries {capacity:flow} and its leaders {leaders:flow}.',
    es: '{gutter:text} recibe {demand:flow} del techo. Lleva {capacity:flow} y sus bajantes {leaders:flow}.',
  },
  'explain.gutterOver': { en: 'What it cannot carry, {overflow:flow}, falls to the ground below.', es: 'Lo que no puede llevar, {overflow:flow}, cae al suelo debajo.' },
  'explain.roofLine': {
    en: '{line:text} carries {flow:flow} under its own head. It stays full between storms and holds {volume:volume}.',
    es: '{line:text} lleva {flow:flow} con su propia carga. Queda llena entre tormentas y guarda {volume:volume}.',
  },
  'explain.channel': {
    en: '{part:text} gets {flow:flow}. The water stands {depth:height} deep in a body of {body:height}, which fills {share:percent} of it.',
    es: '{part:text} recibe {flow:flow}. El agua llega a {depth:height} en un canal de {body:height}, o sea {share:percent} de él.',
  },
  'explain.grate': { en: 'Half blocked, the grate of {part:text} takes {capacity:flow}; {flow:flow} arrive.', es: 'Medio tapada, la rejilla de {part:text} toma {capacity:flow}; llegan {flow:flow}.' },
  'explain.pipe': {
    en: '{part:text} falls {slope:slope}. It gets {flow:flow} and carries {full:flow} when full: {share:percent} of it is used.',
    es: '{part:text} cae {slope:slope}. Recibe {flow:flow} y llena lleva {full:flow}: se usa {share:percent}.',
  },
  'explain.pipeNoFall': { en: '{part:text} does not fall. A drain pipe must always fall.', es: '{part:text} no cae. Una tubería de drenaje siempre debe caer.' },
  'explain.swale': {
    en: '{part:text} gets {flow:flow}. The water runs {depth:height} deep, {width:length} wide, at {velocity:velocity}; the swale is {built:length} deep.',
    es: '{part:text} recibe {flow:flow}. El agua corre con {depth:height} de tirante y {width:length} de ancho, a {velocity:velocity}; la zanja tiene {built:length} de hondo.',
  },
  'explain.underdrain': { en: '{part:text} takes {inflow:flow} of ground water, rain or not.', es: '{part:text} toma {inflow:flow} de agua del subsuelo, llueva o no.' },
  'explain.pump': {
    en: '{part:text} lifts the water {lift:head} and gives {flow:flow} on its line at the stop level, {flowOn:flow} at the start level. In the line it runs at {velocity:velocity}.',
    es: '{part:text} eleva el agua {lift:head} y da {flow:flow} en su línea al nivel de paro, {flowOn:flow} al de arranque. En la línea corre a {velocity:velocity}.',
  },
  'explain.basin': {
    en: '{part:text} works with {volume:volume} between start and stop. At worst the pump starts {starts:count} times an hour; alone it runs {time:seconds}.',
    es: '{part:text} trabaja con {volume:volume} entre arranque y paro. En el peor caso la bomba arranca {starts:count} veces por hora; sola anda {time:seconds}.',
  },
  'explain.pit': { en: 'The stone at {part:text} holds {pit:volume}; the line leaves {line:volume}.', es: 'La piedra en {part:text} guarda {pit:volume}; la línea deja {line:volume}.' },
  'explain.dryWell': {
    en: '{part:text} holds {store:volume}. Full, it soaks away {soakage:flow}, and it is empty again after {time:hours}.',
    es: '{part:text} guarda {store:volume}. Lleno, infiltra {soakage:flow}, y se vacía en {time:hours}.',
  },
  'explain.dryWellClosed': { en: '{part:text} holds {store:volume}, and nothing soaks away.', es: '{part:text} guarda {store:volume}, y nada se infiltra.' },
  'explain.well': {
    en: 'In the storm of {years:count} years the water in {part:text} rises to {level:level}. The soil takes {soaked:volume}, and nothing runs over.',
    es: 'En la tormenta de {years:count} años el agua en {part:text} sube a {level:level}. El suelo toma {soaked:volume}, y nada rebosa.',
  },
  'explain.wellOver': {
    en: 'In the storm of {years:count} years the water in {part:text} rises to {level:level}. The soil takes {soaked:volume}, and {over:volume} run over.',
    es: 'En la tormenta de {years:count} años el agua en {part:text} sube a {level:level}. El suelo toma {soaked:volume}, y rebosan {over:volume}.',
  },
  'explain.recorded.below': {
    en: 'In the measured storm "{storm:text}" the water stops {freeboard:height} below {sill:text}.', es: 'En la tormenta medida "{storm:text}" el agua queda {freeboard:height} bajo {sill:text}.',
  },
  'explain.recorded.over': {
    en: 'In the measured storm "{storm:text}" water would stand over {sill:text} for {time:clockMinutes}. It would come in.',
    es: 'En la tormenta medida "{storm:text}" el agua estaría sobre {sill:text} durante {time:clockMinutes}. Entraría.',
  },
  'explain.protection.all': {
    en: 'With the inlets half blocked, even the low end of the estimate keeps out every storm of the table, up to {years:count} years or more.',
    es: 'Con las entradas medio tapadas, aun el extremo bajo de la estimación deja fuera todas las tormentas de la tabla, hasta {years:count} años o más.',
  },
  'explain.protection.upTo': {
    en: 'With the inlets half blocked, even the low end of the estimate keeps out the storm of {years:count} years; that of {fails:count} years may come in.',
    es: 'Con las entradas medio tapadas, aun el extremo bajo de la estimación deja fuera la tormenta de {years:count} años; la de {fails:count} años puede entrar.',
  },
  'explain.protection.none': {
    en: 'With the inlets half blocked, the low end of the estimate lets in even the storm of {fails:count} years.',
    es: 'Con las entradas medio tapadas, el extremo bajo de la estimación deja entrar aun la tormenta de {fails:count} años.',
  },
  'explain.then.below': {
    en: 'With the system, in the storm of {years:count} years, the water stops {freeboard:height} below {sill:text}. It could be {low:height} to {high:height}.',
    es: 'Con el sistema, en la tormenta de {years:count} años, el agua queda {freeboard:height} bajo {sill:text}. Puede ser de {low:height} a {high:height}.',
  },
  'explain.then.belowAlone': {
    en: 'With the system, in the storm of {years:count} years, the water stops {freeboard:height} below {sill:text}.',
    es: 'Con el sistema, en la tormenta de {years:count} años, el agua queda {freeboard:height} bajo {sill:text}.',
  },
  'explain.then.maybe': {
    en: 'With the system, in the storm of {years:count} years, the water stops {freeboard:height} below {sill:text}. It could also come in.',
    es: 'Con el sistema, en la tormenta de {years:count} años, el agua queda {freeboard:height} bajo {sill:text}. También puede entrar.',
  },
  'explain.then.over': {
    en: 'With the system, in the storm of {years:count} years, water would still stand over {sill:text} for {time:clockMinutes}. It would come in.',
    es: 'Con el sistema, en la tormenta de {years:count} años, el agua aún estaría sobre {sill:text} durante {time:clockMinutes}. Entraría.',
  },
  'explain.outage': {
    en: 'In the storm of {years:count} years the power may be out for {time:minutes}, whenever that begins, before water comes in.',
    es: 'En la tormenta de {years:count} años la luz puede faltar {time:minutes}, empiece cuando empiece, antes de que entre agua.',
  },
  'explain.outageNone': { en: 'In the storm of {years:count} years no power cut can be borne.', es: 'En la tormenta de {years:count} años no se aguanta ningún corte de luz.' },
  'explain.sheet.direct': { en: '{title:term}: {formula:text}. It comes to {value:number}. Source: {source:text}.', es: '{title:term}: {formula:text}. Da {value:number}. Fuente: {source:text}.' },
  'explain.sheet.trial': {
    en: '{title:term}: {formula:text}, solved by trial for {symbol:text}. It comes to {value:number}. Source: {source:text}.',
    es: '{title:term}: {formula:text}, resuelta por tanteo para {symbol:text}. Da {value:number}. Fuente: {source:text}.',
  },
  'explain.sheet.symbol': { en: '{symbol:text} is {value:number}, {meaning:term}.', es: '{symbol:text} es {value:number}, {meaning:term}.' },
  'explain.sheet.step': { en: '{symbol:text} = {formula:text} is {value:number}, {meaning:term}.', es: '{symbol:text} = {formula:text} es {value:number}, {meaning:term}.' },
});
