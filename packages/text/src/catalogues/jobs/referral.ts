import { catalogue } from '../../catalogue.ts';

/** The letter for a site that needs an engineer (who to call, what to keep away from). */
export const jobReferral = catalogue({
  'jobs.referral.observed.retainingWallOver4ft': { en: 'A retaining wall stands higher than 4 ft.', es: 'Un muro de contención mide más de 4 pies.' },
  'jobs.referral.observed.leaningWall': { en: 'A wall leans.', es: 'Un muro está inclinado.' },
  'jobs.referral.observed.slabOffset': { en: 'A slab has cracked and one side stands lower.', es: 'Una losa se agrietó y un lado quedó más bajo.' },
  'jobs.referral.observed.voidUnderSlab': { en: 'There is an empty space under a slab.', es: 'Hay un hueco debajo de una losa.' },
  'jobs.referral.observed.movingFooting': { en: 'A footing has moved.', es: 'Un cimiento se ha movido.' },
  'jobs.referral.observed.postTensionSlab': { en: 'The slab may hold stretched steel cables.', es: 'La losa puede tener cables de acero tensados.' },
  'jobs.referral.observed.publicPipe': { en: 'A public pipe or easement is part of the trouble.', es: 'Un tubo público o una servidumbre es parte del problema.' },
  'jobs.referral.observed.sewage': { en: 'Sewage was seen or smelled.', es: 'Se vieron o se olieron aguas negras.' },
  'jobs.referral.observed.waterOnDryDays': { en: 'Water runs on dry days.', es: 'Corre agua en días secos.' },
  'jobs.referral.observed.externalFlood': { en: 'Flood water from outside the lot stands higher than the sill.', es: 'El agua de inundación de fuera del terreno sube más que el umbral.' },
  'jobs.referral.observed.neighbourFill': { en: 'The neighboring lot was filled and sends its water here.', es: 'El terreno vecino se rellenó y manda su agua aquí.' },
  'jobs.referral.observed.lotLineDispute': { en: 'The lot line is in dispute.', es: 'El lindero está en disputa.' },
  'jobs.referral.observed.septicNear': { en: 'A septic field or a well is near.', es: 'Hay un campo séptico o un pozo cerca.' },
  'jobs.referral.observed.wetland': { en: 'A wetland is near.', es: 'Hay un humedal cerca.' },

  'jobs.referral.to.engineer': { en: 'A licensed geotechnical or structural engineer', es: 'Un ingeniero geotécnico o estructural con licencia' },
  'jobs.referral.to.engineerAndScan': { en: 'A licensed engineer and a slab scanning firm', es: 'Un ingeniero con licencia y una empresa que escanee la losa' },
  'jobs.referral.to.authority': { en: 'The city or county office for drains and easements', es: 'La oficina de drenaje y servidumbres de la ciudad o del condado' },
  'jobs.referral.to.plumber': { en: 'A licensed plumber and the health department', es: 'Un plomero con licencia y el departamento de salud' },
  'jobs.referral.to.leakTest': { en: 'A licensed plumber for a leak test', es: 'Un plomero con licencia para buscar una fuga' },
  'jobs.referral.to.floodplain': { en: 'The floodplain office of the city or county', es: 'La oficina de zonas inundables de la ciudad o del condado' },
  'jobs.referral.to.health': { en: 'The health department', es: 'El departamento de salud' },
  'jobs.referral.to.civil': { en: 'A civil engineer and the authority', es: 'Un ingeniero civil y la autoridad' },

  'jobs.referral.caution.keepAway': { en: 'Tape the place off and keep people away from it.', es: 'Acordone el lugar y mantenga a la gente lejos.' },
  'jobs.referral.caution.noLoad': { en: 'Put no load on the slab or behind the wall: no car, no soil, no pool.', es: 'No ponga carga en la losa ni detrás del muro: ni auto, ni tierra, ni piscina.' },
  'jobs.referral.caution.noDigging': { en: 'Do not dig there until the engineer has answered.', es: 'No excave ahí hasta que responda el ingeniero.' },
  'jobs.referral.caution.noWater': { en: 'Stay out of the water and keep children and pets away from it.', es: 'No entre en el agua y mantenga lejos a niños y mascotas.' },
  'jobs.referral.caution.noCutting': { en: 'Do not cut or drill the slab.', es: 'No corte ni perfore la losa.' },
});
