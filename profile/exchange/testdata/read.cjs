// node read.cjs MODULE FILE: what DuckDB makes of a CSV by itself, the types of its
// columns and its rows as text, as JSON.
const { DuckDBInstance } = require(process.argv[2]);
const file = process.argv[3].replaceAll("'", "''");
(async () => {
  const c = await (await DuckDBInstance.create(':memory:')).connect();
  const rows = async (sql) => (await c.runAndReadAll(sql)).getRowsJson();
  const types = await rows(`select column_name, column_type from (describe select * from read_csv('${file}'))`);
  const text = await rows(`select * from read_csv('${file}', all_varchar = true)`);
  console.log(JSON.stringify({ types, text }));
})();
