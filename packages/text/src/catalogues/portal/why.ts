import { catalogue } from '../../catalogue.ts';

/** Why it is built this way, in plain words with live numbers. Sentences of 15 words at most. */
export const portalWhy = catalogue({
  'portal.why.now.over': {
    en: 'Without a drain, water comes in at your door in a hard storm. In the storm we planned for, it would stand over your sill for {minutes:duration}. The sill is the lowest place where water can step into the house.',
    es: 'Sin drenaje, con lluvia fuerte entra agua por su puerta. En la lluvia del plan, estaría sobre el umbral {minutes:duration}. El umbral es el borde más bajo por donde entra el agua.',
  },
  'portal.why.now.below': {
    en: 'Without a drain, water stops {height:height} below your door in the storm we planned for.',
    es: 'Sin drenaje, en la lluvia del plan el agua queda {height:height} bajo su puerta.',
  },
  'portal.why.roofAway': { en: 'The roof water is led away.', es: 'El agua del techo se lleva lejos.' },
  'portal.why.pumpRest': { en: 'A pump lifts the rest.', es: 'Una bomba sube el resto.' },
  'portal.why.pump': { en: 'A pump lifts the water.', es: 'Una bomba sube el agua.' },
  'portal.why.byItself': { en: 'The water runs downhill by itself. No pump is needed.', es: 'El agua corre sola hacia abajo. No hace falta una bomba.' },
  'portal.why.tooHigh': {
    en: 'Water runs only downhill. The best place to send it is {shortfall:height} too high for that.',
    es: 'El agua solo corre hacia abajo. El mejor lugar para mandarla queda {shortfall:height} muy alto.',
  },
  'portal.why.storm': { en: 'We planned for a storm that has 1 chance in {years:count} each year.', es: 'El plan es para una lluvia con 1 posibilidad en {years:count} cada año.' },
  'portal.why.tenYearsOneIn': { en: 'That is about 1 in {n:count} over ten years.', es: 'Eso es más o menos 1 en {n:count} en diez años.' },
  'portal.why.tenYearsOfTen': { en: 'That is about {n:count} in 10 over ten years.', es: 'Eso es más o menos {n:count} en 10 en diez años.' },
  'portal.why.freeboard': { en: 'In it, the water should stop about {height:height} below your door.', es: 'Con ella, el agua debe quedar a unas {height:height} bajo su puerta.' },
  'portal.why.band': { en: 'It could be {low:height} to {high:height} below.', es: 'Puede quedar de {low:height} a {high:height} abajo.' },
  'portal.why.bandOver': {
    en: 'It could be {high:height} below. It could also come in.',
    es: 'Puede quedar {high:height} abajo. También puede entrar.',
  },
  'portal.why.over': {
    en: 'In it, water would still stand over your sill for about {minutes:duration}. It would come in.',
    es: 'Con ella, el agua aún estaría sobre el umbral unos {minutes:duration}. Entraría.',
  },
  'portal.why.stillIn.bigger': { en: 'What can still let water in: a bigger storm.', es: 'Lo que aún puede dejar entrar agua: una lluvia más grande.' },
  'portal.why.stillIn.power': { en: 'No power for more than {time:minutes}.', es: 'Estar sin luz más de {time:minutes}.' },
  'portal.why.stillIn.gutter': { en: 'A gutter that overflows.', es: 'Una canaleta que se desborda.' },
  'portal.why.stillIn.leaves': { en: 'Leaves on the grate.', es: 'Hojas en la rejilla.' },
  'portal.why.stillIn.street': { en: 'Water from the street.', es: 'Agua de la calle.' },
  'portal.why.powerOut.over': {
    en: 'With no power in that storm, water would stand over your sill for {minutes:duration}.',
    es: 'Sin luz en esa lluvia, el agua estaría sobre el umbral {minutes:duration}.',
  },
  'portal.why.powerOut.below': { en: 'With no power in that storm, water would stop {height:height} below your door.', es: 'Sin luz en esa lluvia, el agua quedaría {height:height} bajo su puerta.' },
  'portal.why.gutter.over': {
    en: 'If the gutter overflows in it, water would stand over your sill for {minutes:duration}.',
    es: 'Si la canaleta se desborda, el agua estaría sobre el umbral {minutes:duration}.',
  },
  'portal.why.gutter.below': { en: 'If the gutter overflows in it, water would stop {height:height} below your door.', es: 'Si la canaleta se desborda, el agua quedaría {height:height} bajo su puerta.' },
  'portal.why.measured.levels': { en: 'What we measured: {n:plural|# level|# levels} in your yard.', es: 'Lo que medimos: {n:plural|# nivel|# niveles} en su patio.' },
  'portal.why.measured.lowSpot': { en: 'How much water the low spot holds: {volume:volume}.', es: 'Cuánta agua cabe en la parte baja: {volume:volume}.' },
  'portal.why.measured.drain': { en: 'How fast your old drain backs up.', es: 'Qué tan pronto se llena su drenaje viejo.' },
  'portal.why.measured.soil': { en: 'How fast your soil takes water.', es: 'Qué tan pronto su suelo toma agua.' },
  'portal.why.guessed.runoff': { en: 'What we guessed: how much rain runs off each surface.', es: 'Lo que estimamos: cuánta lluvia corre en cada superficie.' },
  'portal.why.guessed.soil': { en: 'How fast your soil takes water.', es: 'Qué tan pronto su suelo toma agua.' },
  'portal.why.guessed.slab': { en: 'How thick your slab is.', es: 'Qué tan gruesa es su losa.' },
  'portal.why.guessed.rain': { en: 'The rain table is made up. Do not build from it.', es: 'La tabla de lluvia es inventada. No construya con ella.' },
  'portal.why.ifWeFind': {
    en: 'If we find a thick slab or an old pipe, we stop. We show you a photo. We agree a price first.',
    es: 'Si hay una losa gruesa o un tubo viejo, paramos. Le damos una foto. Antes de seguir, se acuerda un precio.',
  },
  'portal.why.noDry': { en: 'We can\'t promise "dry".', es: 'No podemos prometer "seco".' },
  'portal.why.promise.pump': {
    en: 'We promise these levels and a pump that moves about {flow:flow}. We test it with you watching. Up to {within:percent} more or less passes.',
    es: 'Damos estos niveles y una bomba que mueve unos {flow:flow}. La prueba se hace con usted. Hasta {within:percent} más o menos, pasa.',
  },
  'portal.why.promise.gravity': { en: 'We promise these levels. We test the pipe with you watching.', es: 'Damos estos niveles. La prueba del tubo se hace con usted.' },
  'portal.why.answers': { en: '{name:text} answers for these numbers.', es: '{name:text} responde por estas cifras.' },
  'portal.why.ownCalculation': {
    en: 'These are our own figures for this job. No licensed engineer made, checked or sealed them. They hold only for the levels, rain and state named here.',
    es: 'Estas son cifras nuestras para este trabajo. Ningún ingeniero con licencia las hizo, revisó ni selló. Valen solo para los niveles, la lluvia y el estado de aquí.',
  },
});
