bad("docs/guide.md" "`cropful plan FILE` plans; --jsonl is no option.\n" "does not mention --json (of today")
bad("docs/guide.md" "--json\n" "does not mention cropful plan (of plan)")
bad("docs/guide.md" "`cropful diary add` --json\n" "does not mention --note (of diary add, diary edit)")
bad("docs/guide.md" "`cropful diary show`\n" "does not mention cropful diary add (of diary add)")
