export const jobs = {
  title: "Jobs",
};
