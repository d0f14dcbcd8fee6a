export const sprayers = {
  title: "Sprayers",
};
