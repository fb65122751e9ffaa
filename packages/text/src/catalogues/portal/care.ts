import { catalogue } from '../../catalogue.ts';

/** What comes next, and who cares for what and when after the handover. */
export const portalCare = catalogue({
  'portal.next.intake': { en: 'We call you to arrange a visit.', es: 'Le llamamos para acordar una visita.' },
  'portal.next.visit': { en: 'We come and measure your yard.', es: 'Vamos a medir su patio.' },
  'portal.next.design': { en: 'We work out what will help.', es: 'Estudiamos qué puede ayudar.' },
  'portal.next.pricing': { en: 'We work out the price.', es: 'Calculamos el precio.' },
  'portal.next.offered': { en: 'You read the offer and answer it.', es: 'Usted lee la oferta y la responde.' },
  'portal.next.accepted': { en: 'We have your yes. We ask the utilities to mark their lines.', es: 'Tenemos su sí. Pedimos que marquen las líneas de servicios.' },
  'portal.next.released': { en: 'The utilities mark their lines. Then we dig.', es: 'Se marcan las líneas de servicios. Luego excavamos.' },
  'portal.next.installing': { en: 'The crew is at work. You see each step here.', es: 'La cuadrilla trabaja. Aquí ve cada paso.' },
  'portal.next.proving': { en: 'We test it with you watching.', es: 'Lo probamos con usted presente.' },
  'portal.next.handedOver': { en: 'The work is done. This page says what to do and when.', es: 'La obra está lista. Esta página dice qué hacer y cuándo.' },
  'portal.next.referred': { en: 'This needs an engineer. Our letter says what we saw.', es: 'Esto necesita un ingeniero. Nuestra carta dice lo que vimos.' },
  'portal.next.declined': { en: 'We do not take this job.', es: 'No tomamos este trabajo.' },

  'portal.care.basket': { en: 'Empty the leaf basket and sweep the grate. Unplug the pump first; plug it in again.', es: 'Vacíe la canasta de hojas y barra la rejilla. Antes desenchufe la bomba; luego enchúfela.' },
  'portal.care.bucket': { en: 'Pour 5 to 10 gallons into the grate. See the pump start and stop.', es: 'Eche de 5 a 10 galones en la rejilla. Vea que la bomba arranca y para.' },
  'portal.care.alarm': { en: 'Test the alarm and the safety outlet (GFCI). It cuts the power when water meets it.', es: 'Pruebe la alarma y el enchufe de seguridad (GFCI). Corta la luz si toca agua.' },
  'portal.care.emitter': { en: 'See that the lid on the lawn opens. No turf may cover it. Its pit must drain.', es: 'Vea que la tapa del césped abre. Que no la cubra pasto. Que su pozo se vacíe.' },
  'portal.care.vacuum': { en: 'Vacuum the basin. Clean the screen, the weep hole and the check valve.', es: 'Aspirar el pozo. Limpiar la malla, el agujero de purga y la válvula.' },
  'portal.care.pumpDown': { en: 'Measure the pump again. If it is 15 % weaker, find out why.', es: 'Medir la bomba otra vez. Si está 15 % más débil, buscar la causa.' },
  'portal.care.flush': { en: 'Flush the pipe through its cleanout.', es: 'Lavar el tubo por su tapón de limpieza.' },
  'portal.care.battery': { en: 'Test the battery under load.', es: 'Probar la batería con carga.' },
  'portal.care.pumpAge': { en: 'Put money aside for a new pump.', es: 'Aparte dinero para una bomba nueva.' },
  'portal.care.levels': { en: 'Check the grate, the sill and the soil for settling.', es: 'Revisar si la rejilla, el umbral o la tierra se hundieron.' },
  'portal.care.grade': { en: 'See that soil, mulch and edging let the water pass.', es: 'Vea que tierra, mantillo y bordes dejen pasar el agua.' },

  'portal.when.monthly': { en: 'Every month; each week when leaves fall; before a named storm', es: 'Cada mes; cada semana cuando caen hojas; antes de una tormenta con nombre' },
  'portal.when.quarterly': { en: 'Every 3 months and before the wet season', es: 'Cada 3 meses y antes de las lluvias' },
  'portal.when.springSummer': { en: 'In spring and in midsummer', es: 'En primavera y a mitad del verano' },
  'portal.when.yearly': { en: 'Every year', es: 'Cada año' },
  'portal.when.sevenToTenYears': { en: 'In 7 to 10 years', es: 'En 7 a 10 años' },
  'portal.when.thirtyDaysAndYear': { en: 'After 30 days and after a year', es: 'A los 30 días y al año' },
  'portal.when.afterYardWork': { en: 'After any work in the yard', es: 'Después de cualquier obra en el patio' },
});
