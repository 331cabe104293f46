namespace Ascham.Records;

/// <summary>Refuses a second row with the same key, naming the line of the first.</summary>
/// <param name="what">What the key identifies, for messages.</param>
sealed class UniqueRows<TKey>(string what)
    where TKey : notnull
{
    readonly Dictionary<TKey, int> lines = [];

    internal void Add<T>(TKey key, string told, CsvRow row, CsvColumn<T> column)
    {
        if (!lines.TryAdd(key, row.Line))
        {
            throw new RecordException(row.Place(column.Index, column.Name),
                FormattableString.Invariant($"{what} {RecordException.Quote(told)} was already given on line {lines[key]}"), told, "each one once");
        }
    }
}
