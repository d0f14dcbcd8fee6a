export const fieldDay = {
  title: "Field day",
};
