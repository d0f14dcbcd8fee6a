import type { fieldDay as english } from "../en/field_day";

export const fieldDay: typeof english = {
  title: "En campo",
  positionTrouble: {
    absent: "Este navegador no da posiciones. La jornada sigue: anote las pasadas a mano.",
    refused: "Esta página no puede leer la posición. Permítalo en los ajustes del navegador para esta página, o anote las pasadas a mano.",
    unavailable: "El teléfono no encuentra posición ahora. Salga a campo abierto; sigue solo.",
  },
  unkeptFull: "Este teléfono ya no tiene espacio: las últimas posiciones están solo en la memoria. Libere espacio ya (fotos, videos); se intenta otra vez cada pocos segundos.",
  unkept: "Las últimas posiciones todavía no se pudieron escribir y están solo en la memoria. Se intenta otra vez cada pocos segundos.",
  silent: "Sin posición desde hace {0} s. Este tramo quedará como hueco.",
  notAwake: "El teléfono puede apagar la pantalla y parar las posiciones: tóquela de vez en cuando.",
};
