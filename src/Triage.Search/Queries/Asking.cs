using Triage.Search.Analysis;
using Triage.Search.Words;

namespace Triage.Search.Queries;

/// <summary>What a question is read with.</summary>
/// <param name="Words">Words of the index as it was when it was opened.</param>
/// <param name="Recogniser">Null: no findings are looked for in questions.</param>
internal sealed record Asking(NoteAnalyzer Analyzer, SynonymRings Synonyms, Recogniser? Recogniser, IndexWords Words, Ranking Parts);
