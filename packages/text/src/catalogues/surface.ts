import { catalogue } from '../catalogue.ts';

/** Why no ground can be made of the spot levels, by the code of the calc package. */
export const surface = catalogue({
  'surface.tooFewPoints': { en: 'Three spot levels with a place on the plan are needed for a ground; there {count:plural|is one|are #}.', es: 'Para un terreno hacen falta tres niveles con lugar en el plano; {count:plural|hay uno|hay #}.' },
  'surface.inLine': { en: 'All spot levels lie on one line: take one beside it.', es: 'Todos los niveles están en una línea: tome uno al lado.' },
  'surface.twoLevels': { en: 'Two spot levels stand at one place with different levels: {level:level} and {other:level}.', es: 'Dos niveles están en un mismo lugar con valores distintos: {level:level} y {other:level}.' },
  'surface.breaklinesCross': { en: 'Two breaklines cross; give the place where they meet one level.', es: 'Dos líneas de quiebre se cruzan; dé un solo nivel al lugar donde se encuentran.' },
  'surface.linesCross': { en: 'Two lines of the ground cross where they must not.', es: 'Dos líneas del terreno se cruzan donde no deben.' },
  'surface.lineTooShort': { en: 'A line of the ground needs {least:plural|one place|# places}.', es: 'Una línea del terreno necesita {least:plural|un lugar|# lugares}.' },
  'surface.tooMany': { en: 'The ground has {count:number} places; {most:number} are taken at most.', es: 'El terreno tiene {count:number} lugares; se toman {most:number} a lo sumo.' },
  'surface.tooFar': { en: 'A place lies {value:number} m away: a typing error?', es: 'Un lugar está a {value:number} m: ¿un error al escribir?' },
  'surface.notFinite': { en: 'A place or level is not a number.', es: 'Un lugar o nivel no es un número.' },
  'surface.noGround': { en: 'Nothing was measured outside the walls and houses.', es: 'No se midió nada fuera de los muros y casas.' },
  'surface.notTriangulated': { en: 'The lines of the ground could not be joined; look for two places that nearly touch.', es: 'Las líneas del terreno no se pudieron unir; busque dos lugares que casi se tocan.' },
  'surface.outsideLowSpot': { en: 'The water level must lie between {bottom:level} and {top:level}.', es: 'El nivel del agua debe estar entre {bottom:level} y {top:level}.' },
  'surface.offGround': { en: 'This place lies outside the measured ground.', es: 'Este lugar está fuera del terreno medido.' },
  'surface.noDepth': { en: 'The low spot at {level:level} has no depth.', es: 'El punto bajo a {level:level} no tiene profundidad.' },
  'surface.notRising': { en: 'Levels must rise from one to the next.', es: 'Los niveles deben subir de uno al siguiente.' },
  'surface.tooFewRows': { en: 'A table needs two rows.', es: 'Una tabla necesita dos filas.' },
  'surface.badInterval': { en: 'Contours need a step above zero.', es: 'Las curvas de nivel necesitan un paso mayor que cero.' },
  'surface.tooManyContours': { en: 'That many contours cannot be read: take a larger step.', es: 'Tantas curvas de nivel no se pueden leer: tome un paso mayor.' },
  'surface.badDepth': { en: 'The least depth of a low spot must not be negative.', es: 'La profundidad mínima de un punto bajo no puede ser negativa.' },
});
