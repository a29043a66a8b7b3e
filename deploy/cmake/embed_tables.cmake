# Writes the texts of the files INPUTS (separated by |) into OUTPUT as holdfast::kiosk::wording::NAME, ended by a null.
string(REPLACE "|" ";" files "${INPUTS}")
set(rows "")
foreach(file IN LISTS files)
  file(READ ${file} text)
  string(APPEND rows "    R\"~table~(${text})~table~\",\n")
endforeach()
file(WRITE ${OUTPUT} "namespace holdfast::kiosk::wording {\nextern const char* const ${NAME}[];\nconst char* const ${NAME}[] = {\n${rows}    nullptr};\n}\n")
