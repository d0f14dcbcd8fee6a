export const ground = {
  title: "Ground",
};
