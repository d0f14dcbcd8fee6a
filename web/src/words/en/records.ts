export const records = {
  title: "Records",
};
