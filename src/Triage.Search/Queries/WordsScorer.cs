using Lucene.Net.Search;

namespace Triage.Search.Queries;

/// <summary>Where one word stands in the notes of a segment.</summary>
/// <param name="Fields">In each field that has it.</param>
/// <param name="All">In all text.</param>
internal sealed record WordScorers(Scorer[] Fields, Scorer? All)
{
    public long Cost => Fields.Sum(f => f.GetCost());
}

/// <summary>Scores notes of a segment for <see cref="WordsQuery"/>, a stretch of them at a time.</summary>
internal sealed class WordsScorer(Weight weight, WordScorers[] words, float others, int least, int notes) : Scorer(weight)
{
    // rare ones first: of the common ones only notes have to be scored that can still have enough words
    private readonly WordScorers[] words = [.. words.OrderBy(w => w.Cost)];
    // the sums of a stretch stay in the processor's nearest cache
    private const int Stretch = 2048;
    private const float Unseen = -1;

    private readonly float[] best = [.. Enumerable.Repeat(Unseen, Stretch)];
    private readonly float[] sum = new float[Stretch];
    private readonly double[] total = new double[Stretch];
    private readonly int[] matched = new int[Stretch];
    private readonly int[] touched = new int[Stretch];
    private int first;
    private int end;
    private int doc = -1;

    public override int DocID => doc;

    public override int Freq => matched[doc - first];

    public override float GetScore() => (float)total[doc - first];

    public override long GetCost() => words.Sum(w => w.Cost);

    public override int NextDoc() => Advance(doc + 1);

    public override int Advance(int target)
    {
        while (target < notes)
        {
            if (target >= end)
            {
                Read(target);
                target = Math.Max(target, first);
            }

            for (var at = target - first; at < end - first; at++)
            {
                if (matched[at] >= least)
                {
                    return doc = first + at;
                }
            }

            target = end;
        }

        return doc = NO_MORE_DOCS;
    }

    /// <summary>Scores the stretch that begins with a note, or with the next one that has any of the words.</summary>
    private void Read(int from)
    {
        first = Math.Min(notes, NextWith(from));
        end = Math.Min(notes, first + Stretch);
        Array.Clear(total);
        Array.Clear(matched);
        for (var word = 0; word < words.Length; word++)
        {
            AddWord(words[word], already: least - (words.Length - word));
        }
    }

    private int NextWith(int from)
    {
        var next = NO_MORE_DOCS;
        foreach (var field in words.SelectMany(w => w.Fields))
        {
            next = Math.Min(next, field.DocID < from ? field.Advance(from) : field.DocID);
        }

        return next;
    }

    /// <param name="already">Words that a note must have up to here.</param>
    private void AddWord(WordScorers word, int already)
    {
        var count = 0;
        foreach (var field in word.Fields)
        {
            for (var at = field.DocID; at < end; at = field.NextDoc())
            {
                var slot = at - first;
                if (matched[slot] < already)
                {
                    continue;
                }

                var score = field.GetScore();
                if (best[slot] == Unseen)
                {
                    touched[count++] = slot;
                }

                sum[slot] += score;
                best[slot] = Math.Max(best[slot], score);
            }
        }

        foreach (var slot in touched.AsSpan(0, count))
        {
            total[slot] += best[slot] + ((sum[slot] - best[slot]) * others);
            matched[slot]++;
            (best[slot], sum[slot]) = (Unseen, 0);
        }

        if (word.All is { } all)
        {
            AddEverywhere(all, already);
        }
    }

    /// <summary>Adds what the word counts among all text, to the notes that the fields have just counted.</summary>
    private void AddEverywhere(Scorer all, int already)
    {
        for (var at = all.DocID < first ? all.Advance(first) : all.DocID; at < end; at = all.NextDoc())
        {
            if (matched[at - first] > already)
            {
                total[at - first] += all.GetScore();
            }
        }
    }
}
