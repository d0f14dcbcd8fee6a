export const fieldDay = {
  title: "Field day",
  positionTrouble: {
    absent: "This browser gives no positions. The day still works: write passes by hand.",
    refused: "This page may not read the position. Allow it in the browser's settings for this page, or write passes by hand.",
    unavailable: "The phone finds no position now. Go into the open; it goes on by itself.",
  },
  unkeptFull: "This phone has no room left: the newest positions are only in memory. Free some room now (photos, videos); it is tried again every few seconds.",
  unkept: "The newest positions could not be written yet and are only in memory. It is tried again every few seconds.",
  silent: "No position for {0} s. This stretch will be a gap.",
  notAwake: "The phone may darken the screen and stop the positions: touch it now and then.",
};
