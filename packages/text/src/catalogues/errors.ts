import { catalogue } from '../catalogue.ts';

/** One entry for every code that the service answers with: what happened, what was kept, what to do. */
export const errors = catalogue({
  'errors.request.invalid': {
    en: 'Something in what was sent is missing or out of range; nothing was changed. Check the marked fields and send again.',
    es: 'Algo de lo enviado falta o está fuera de rango; no se cambió nada. Revise los campos marcados y envíe otra vez.',
  },
  'errors.request.tooLarge': {
    en: 'This is larger than the office accepts, so nothing was stored. Send a smaller file or fewer rows.',
    es: 'Esto es más grande de lo que la oficina acepta, así que no se guardó nada. Envíe un archivo más pequeño o menos filas.',
  },
  'errors.request.unsupportedType': {
    en: 'This kind of file or text is not accepted here; nothing was stored. Choose one of the kinds named beside the field.',
    es: 'Este tipo de archivo o texto no se acepta aquí; no se guardó nada. Elija uno de los tipos indicados junto al campo.',
  },
  'errors.request.unreadable': {
    en: 'What arrived could not be read, so nothing was changed. Try again; if it happens twice, reload the page.',
    es: 'Lo que llegó no se pudo leer, así que no se cambió nada. Intente otra vez; si vuelve a pasar, recargue la página.',
  },
  'errors.auth.required': {
    en: 'You are not signed in any more. What you typed is still on this page; sign in and send it again.',
    es: 'Su sesión ya no está abierta. Lo que escribió sigue en esta página; inicie sesión y envíelo otra vez.',
  },
  'errors.auth.wrongCredentials': {
    en: 'That e-mail and password do not belong together. Check both and try again.',
    es: 'Ese correo y esa contraseña no corresponden. Revise los dos e intente otra vez.',
  },
  'errors.auth.tooManyAttempts': {
    en: 'Too many tries in a short time. Wait a few minutes, then sign in again.',
    es: 'Demasiados intentos en poco tiempo. Espere unos minutos y vuelva a iniciar sesión.',
  },
  'errors.auth.phoneCutOff': { en: 'The owner has cut this phone off, so the office shows nothing here. What was recorded on it goes to the office when you sign in again.', es: 'El dueño desconectó este teléfono, así que la oficina no muestra nada aquí. Lo anotado en él llega a la oficina cuando vuelva a entrar.' },
  'errors.auth.forbidden': {
    en: 'Your role does not allow this, so nothing was changed. Ask an owner of the company to do it or to give you the role.',
    es: 'Su función no permite esto, así que no se cambió nada. Pida a un dueño de la empresa que lo haga o que le dé la función.',
  },
  'errors.auth.badOrigin': {
    en: 'This request came from another address than the office\'s own page and was refused. Open the office page and do it there.',
    es: 'Esta petición vino de una dirección distinta de la página de la oficina y se rechazó. Abra la página de la oficina y hágalo allí.',
  },
  'errors.auth.linkInvalid': {
    en: 'This link was used already or has run out. Ask the person who sent it for a new one.',
    es: 'Este enlace ya se usó o ha vencido. Pida uno nuevo a la persona que lo envió.',
  },
  'errors.auth.lastOwner': {
    en: 'This is the only owner, so the role stays. Make somebody else an owner first.',
    es: 'Es el único dueño, así que conserva la función. Primero haga dueño a otra persona.',
  },
  'errors.notFound': {
    en: 'There is nothing here that you can open. It may have been moved, or it belongs to somebody else.',
    es: 'Aquí no hay nada que usted pueda abrir. Puede que se haya movido o que sea de otra persona.',
  },
  'errors.conflict.stale': {
    en: 'Somebody changed this after you opened it, so your change was not stored. Look at the newer version, then make your change again.',
    es: 'Alguien cambió esto después de que usted lo abrió, así que su cambio no se guardó. Mire la versión nueva y haga su cambio otra vez.',
  },
  'errors.conflict.preconditionRequired': {
    en: 'The page did not say which version it changes, so nothing was stored. Reload the page and make the change again.',
    es: 'La página no dijo qué versión cambia, así que no se guardó nada. Recargue la página y haga el cambio otra vez.',
  },
  'errors.design.draftOpen': {
    en: 'Revision {number:count} of this design is already a draft; {by:text} is at it. Nothing was changed: carry on in that draft, or issue it first.',
    es: 'La revisión {number:count} de este diseño ya es un borrador; está en ello {by:text}. No se cambió nada: siga en ese borrador, o emítalo antes.',
  },
  'errors.conflict.state': {
    en: 'This is not possible at the present state of the job; nothing was changed. Reload to see where it stands.',
    es: 'Esto no es posible en el estado actual del trabajo; no se cambió nada. Recargue para ver en qué punto está.',
  },
  'errors.conflict.duplicate': {
    en: 'The same entry exists already, so no second one was made. Use the one that is there.',
    es: 'La misma entrada ya existe, así que no se hizo otra. Use la que está.',
  },
  'errors.idempotency.required': {
    en: 'This was sent without its own number, so it was not stored. Reload the page and send again.',
    es: 'Esto se envió sin su número propio, así que no se guardó. Recargue la página y envíe otra vez.',
  },
  'errors.idempotency.mismatch': {
    en: 'The number of this entry was used for something else; the first entry was kept. Reload the page and send again.',
    es: 'El número de esta entrada ya se usó para otra cosa; se conservó la primera. Recargue la página y envíe otra vez.',
  },
  'errors.idempotency.inFlight': {
    en: 'This is being stored right now. Wait a moment and look again before you send it a second time.',
    es: 'Esto se está guardando ahora. Espere un momento y mire otra vez antes de enviarlo de nuevo.',
  },
  'errors.document.invalid': {
    en: 'The design holds something that cannot be built as drawn, so it was not stored. The marked part says what; correct it and save again.',
    es: 'El diseño tiene algo que no se puede construir como está dibujado, así que no se guardó. La parte marcada dice qué; corríjala y guarde otra vez.',
  },
  'errors.levelBook.invalid': {
    en: 'The level book does not add up, so no levels were worked out; every reading was kept. Check the marked line.',
    es: 'La libreta de niveles no cuadra, así que no se calcularon niveles; se conservó cada lectura. Revise la línea marcada.',
  },
  'errors.rain.unreadable': {
    en: 'This rain table could not be read, so the rain of the job was not changed. The line and column are named below.',
    es: 'Esta tabla de lluvia no se pudo leer, así que la lluvia del trabajo no cambió. Abajo se indican la línea y la columna.',
  },
  'errors.length.ambiguous': {
    en: 'A length could mean feet or inches, so nothing was stored. Write it with its mark, for example 0.27\' or 3 1/4".',
    es: 'Una longitud puede ser de pies o de pulgadas, así que no se guardó nada. Escríbala con su marca, por ejemplo 0.27\' o 3 1/4".',
  },
  'errors.design.stopFindings': {
    en: 'The design still has findings that stop it, so it stays a draft. They stand at their parts in the section; clear them, then issue.',
    es: 'El diseño todavía tiene hallazgos que lo detienen, así que sigue en borrador. Están en sus partes de la sección; resuélvalos y luego emítalo.',
  },
  'errors.design.unacknowledged': {
    en: 'Some cautions have no answer yet, so the design stays a draft. Say for each why it is accepted, then issue.',
    es: 'Algunas advertencias no tienen respuesta todavía, así que el diseño sigue en borrador. Diga por qué se acepta cada una y luego emítalo.',
  },
  'errors.design.notDraft': {
    en: 'This revision was issued and does not change any more. Start a new revision from it.',
    es: 'Esta revisión ya se emitió y no cambia más. Empiece una revisión nueva a partir de ella.',
  },
  'errors.design.referred': {
    en: 'This site goes to an engineer, so no design can be issued for it. Write the letter of referral.',
    es: 'Este sitio pasa a un ingeniero, así que no se puede emitir un diseño. Escriba la carta de referencia.',
  },
  'errors.draft.conflict': {
    en: 'Somebody else changed the same part while you did; both changes were kept aside. Choose which one stands.',
    es: 'Otra persona cambió la misma parte mientras usted lo hacía; se guardaron los dos cambios aparte. Elija cuál queda.',
  },
  'errors.price.incomplete': {
    en: 'Some lines have no price yet, so there is no total. Fill in the marked lines.',
    es: 'Algunas líneas no tienen precio todavía, así que no hay total. Complete las líneas marcadas.',
  },
  'errors.offer.notOpen': {
    en: 'This offer is not open any more, so no answer was stored. Ask for the newest offer.',
    es: 'Esta oferta ya no está abierta, así que no se guardó respuesta. Pida la oferta más nueva.',
  },
  'errors.offer.hashMismatch': {
    en: 'The offer on this page is not the one that was sent, so nothing was signed. Reload the page and read it again before you accept.',
    es: 'La oferta de esta página no es la que se envió, así que no se firmó nada. Recargue la página y léala otra vez antes de aceptar.',
  },
  'errors.release.held': {
    en: 'Digging cannot be released while something holds the job; nothing was changed. The holds are listed on the job page.',
    es: 'No se puede dar permiso de excavar mientras algo detenga el trabajo; no se cambió nada. Lo que lo detiene está en la página del trabajo.',
  },
  'errors.locate.unknownRule': {
    en: 'There is no locate rule on record for this state, so no legal start can be given; the ticket was not counted. Add the rule with its source first.',
    es: 'No hay una regla de localización registrada para este estado, así que no se puede dar una fecha legal; el aviso no se contó. Agregue primero la regla con su fuente.',
  },
  'errors.checklist.rule': { en: 'Step {item:text} cannot be done so, and nothing was changed. {fault:term}', es: 'El paso {item:text} no puede hacerse así y no se cambió nada. {fault:term}' },
  'errors.checklist.rule.unknown': { en: 'There is no such step.', es: 'No existe ese paso.' },
  'errors.checklist.rule.twice': { en: 'It is named twice.', es: 'Está nombrado dos veces.' },
  'errors.checklist.rule.leavesOutHoldPoint': { en: 'Other work waits for it, so it stays for every job. On one job the owner may waive its proof.', es: 'Otro trabajo depende de él, así que queda en todos los trabajos. En uno solo, el dueño puede dispensar su prueba.' },
  'errors.checklist.rule.rewordsHoldPoint': { en: 'Its proof holds other work, so its name stays. Add a sentence to it.', es: 'Su prueba detiene otro trabajo, así que su nombre queda. Añádale una frase.' },
  'errors.checklist.rule.weakerWithoutReason': { en: 'What weakens a step, or leaves out one that keeps people from harm, needs a reason of a few words; it stands with your name.', es: 'Lo que debilita un paso, u omite uno que evita daños, necesita una razón de pocas palabras; queda con su nombre.' },
  'errors.checklist.rule.limitUnfit': { en: 'That figure has no such limit, or nothing would lie between its limits.', es: 'Esa medida no tiene ese límite, o nada quedaría entre sus límites.' },
  'errors.checklist.held': {
    en: 'A hold point before this step is not proven, so this was not recorded. Open the hold point; it says what is missing.',
    es: 'Falta probar un punto de espera antes de este paso, así que esto no se registró. Abra el punto de espera; dice qué falta.',
  },
  'errors.checklist.stopped': {
    en: 'What was found here is not answered yet, so the work of this step does not begin. Photos, measures and notes are still recorded.',
    es: 'Lo que se halló aquí aún no tiene respuesta, así que el trabajo de este paso no empieza. Las fotos, medidas y notas sí se registran.',
  },
  'errors.checklist.evidenceMissing': {
    en: 'The proof that this step asks for is not complete; what you recorded was kept. Add what is named and finish the step.',
    es: 'Falta parte de la prueba que pide este paso; lo que registró se conservó. Agregue lo indicado y termine el paso.',
  },
  'errors.checklist.notBuildRevision': {
    en: 'This was recorded against a revision that is not being built; it was kept with that remark. Reload to see the steps of the build revision.',
    es: 'Esto se registró para una revisión que no se está construyendo; se conservó con esa nota. Recargue para ver los pasos de la revisión de obra.',
  },
  'errors.photo.notAnImage': {
    en: 'This file is not a photo or video that can be shown, so it was not stored. Take the photo again or choose another file.',
    es: 'Este archivo no es una foto ni un video que se pueda mostrar, así que no se guardó. Tome la foto otra vez o elija otro archivo.',
  },
  'errors.photo.tooLarge': {
    en: 'This photo is larger than the office accepts, so it was not stored. Take it again at a lower size.',
    es: 'Esta foto es más grande de lo que la oficina acepta, así que no se guardó. Tómela otra vez en un tamaño menor.',
  },
  'errors.photo.hashMismatch': {
    en: 'The photo arrived damaged, so it was not stored; the original is still on this device. Send it again.',
    es: 'La foto llegó dañada, así que no se guardó; el original sigue en este dispositivo. Envíela otra vez.',
  },
  'errors.video.tooLarge': {
    en: 'This video is larger than 100 MB, so it was not kept. Film it again, shorter or at a lower size.',
    es: 'Este video pesa más de 100 MB, así que no se guardó. Grábelo otra vez, más corto o en un tamaño menor.',
  },
  'errors.video.unreadable': {
    en: 'This video is not whole, so it was not stored. Choose it again; if it does not play on this phone, it cannot be sent.',
    es: 'Este video no está completo, así que no se guardó. Elíjalo otra vez; si no se ve en este teléfono, no se puede enviar.',
  },
  'errors.upload.offset': {
    en: 'The office has another part of this file than this page thought. Nothing is lost; it goes on from there.',
    es: 'La oficina tiene otra parte de este archivo que la que esta página creía. No se pierde nada; sigue desde ahí.',
  },
  'errors.upload.version': {
    en: 'This page sends files in a way the office does not know. Nothing was stored; reload the page.',
    es: 'Esta página envía archivos de una forma que la oficina no conoce. No se guardó nada; recargue la página.',
  },
  'errors.upload.tooMany': {
    en: 'Too many files are on their way at once, so this one has not begun. Wait until some have arrived.',
    es: 'Hay demasiados archivos en camino a la vez, así que este no ha empezado. Espere a que lleguen algunos.',
  },
  'errors.sending.full': {
    en: 'This link has taken as many files as it can, so this one was not stored. Ask the office for a new link.',
    es: 'Este enlace ya recibió todos los archivos que puede, así que este no se guardó. Pida a la oficina un enlace nuevo.',
  },
  'errors.proof.invalid': {
    en: 'These readings cannot come from one pump-down, so no flow was worked out and nothing was stored. Check levels and times, or run it again.',
    es: 'Estas lecturas no pueden ser de un mismo vaciado, así que no se calculó caudal ni se guardó nada. Revise niveles y tiempos, o repítalo.',
  },
  'errors.handover.notReady': {
    en: 'The job cannot be handed over yet; nothing was changed. What is still open is listed under Handover.',
    es: 'El trabajo no se puede entregar todavía; no se cambió nada. Lo que falta está bajo Entrega.',
  },
  'errors.storage.full': {
    en: 'The office has no room left for files, so this was not stored. Keep it on the device and tell the owner.',
    es: 'La oficina no tiene más espacio para archivos, así que esto no se guardó. Consérvelo en el dispositivo y avise al dueño.',
  },
  'errors.busy': {
    en: 'The office is busy and did not store this. Wait a few seconds and try again.',
    es: 'La oficina está ocupada y no guardó esto. Espere unos segundos e intente otra vez.',
  },
  'errors.internal': {
    en: 'Something went wrong in the office and this was not stored. Try again; if it happens twice, tell the owner the number {requestId:text}.',
    es: 'Algo falló en la oficina y esto no se guardó. Intente otra vez; si vuelve a pasar, dígale al dueño el número {requestId:text}.',
  },
  'errors.phone.full': {
    en: 'This phone has no room left for a photo, so none was taken. Let what waits go to the office, or free some room.',
    es: 'En este teléfono ya no cabe una foto, así que no se tomó. Deje que salga a la oficina lo que espera, o libere espacio.',
  },
  'errors.offline': {
    en: 'The office cannot be reached from here. What you typed is still on this page; try again when there is a signal.',
    es: 'Desde aquí no se alcanza la oficina. Lo que escribió sigue en esta página; intente otra vez cuando haya señal.',
  },
  'errors.unreadableAnswer': {
    en: 'The office answered in a way this page does not understand. Reload the page; if it happens twice, tell the owner.',
    es: 'La oficina respondió de una forma que esta página no entiende. Recargue la página; si vuelve a pasar, avise al dueño.',
  },
});
