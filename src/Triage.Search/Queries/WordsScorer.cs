using Lucene.Net.Search;

namespace Triage.Search.Queries;

/// <summary>Scores notes of a segment for <see cref="WordsQuery"/>, a stretch of them at a time.</summary>
internal sealed class WordsScorer(Weight weight, Scorer[][] words, float others, int least, int notes) : Scorer(weight)
{
    // rare ones first: of the common ones only notes have to be scored that can still have enough words
    private readonly Scorer[][] words = [.. words.OrderBy(w => w.Sum(f => f.GetCost()))];
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

    public override long GetCost() => words.Sum(w => w.Sum(f => f.GetCost()));

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
        foreach (var fields in words)
        {
            foreach (var field in fields)
            {
                next = Math.Min(next, field.DocID < from ? field.Advance(from) : field.DocID);
            }
        }

        return next;
    }

    /// <param name="already">Words that a note must have up to here.</param>
    private void AddWord(Scorer[] fields, int already)
    {
        var count = 0;
        foreach (var field in fields)
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
    }
}
