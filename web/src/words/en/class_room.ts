export const classRoom = {
  title: "Class",
};
