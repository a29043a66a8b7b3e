# Writes the text of INPUT into OUTPUT as holdfast::kiosk::wording::NAME.
file(READ ${INPUT} text)
file(WRITE ${OUTPUT} "namespace holdfast::kiosk::wording {\nextern const char* const ${NAME};\nconst char* const ${NAME} = R\"~table~(${text})~table~\";\n}\n")
