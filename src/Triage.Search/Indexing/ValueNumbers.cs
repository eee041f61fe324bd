namespace Triage.Search.Indexing;

/// <summary>Numbers values from 0 as they come. Safe for several threads.</summary>
internal sealed class ValueNumbers
{
    private readonly Lock changing = new();
    private readonly Dictionary<string, int> byValue = new(StringComparer.Ordinal);
    private readonly List<string> values = [];

    public int Count
    {
        get
        {
            lock (changing)
                return values.Count;
        }
    }

    public string this[int number]
    {
        get
        {
            lock (changing)
                return values[number];
        }
    }

    /// <summary>The number of a value; null when it has none.</summary>
    public int? Find(string value)
    {
        lock (changing)
            return byValue.TryGetValue(value, out var number) ? number : null;
    }

    /// <summary>The number of a value, a new one if it has none.</summary>
    public int Add(string value)
    {
        lock (changing)
        {
            if (!byValue.TryGetValue(value, out var number))
            {
                byValue[value] = number = values.Count;
                values.Add(value);
            }

            return number;
        }
    }
}
