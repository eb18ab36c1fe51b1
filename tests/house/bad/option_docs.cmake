bad("docs/guide.md" "`cropful plan FILE` plans; --jsonl is no option.\n" "does not mention --json (of plan")
bad("docs/guide.md" "--json\n" "does not mention cropful plan (of plan)")
