// Where the Spanish sentences of the core lie among the built files.
import place from "../../../data/language/es.tsv?url";

export default place;
