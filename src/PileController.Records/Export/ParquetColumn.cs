using Parquet;
using Parquet.Schema;

namespace PileController.Records.Export;

/// <summary>One column of a Parquet file.</summary>
/// <typeparam name="T">What makes a row.</typeparam>
/// <param name="Field">Its name and kind.</param>
/// <param name="WriteAsync">Writes it for the rows of one group.</param>
internal sealed record ParquetColumn<T>(DataField Field, Func<ParquetRowGroupWriter, T[], Task> WriteAsync)
{
    /// <summary>A number that is always there.</summary>
    public static ParquetColumn<T> Of<TValue>(string name, Func<T, TValue> of)
        where TValue : struct
    {
        DataField<TValue> field = new(name);
        return new(field, (group, rows) => group.WriteAsync<TValue>(field, Array.ConvertAll(rows, row => of(row))));
    }

    /// <summary>A number, or none.</summary>
    public static ParquetColumn<T> OrNone(string name, Func<T, double?> of)
    {
        DataField<double?> field = new(name);
        return new(field, (group, rows) => group.WriteAsync<double>(field, Array.ConvertAll(rows, row => of(row))));
    }

    /// <summary>A text, or none.</summary>
    public static ParquetColumn<T> Text(string name, Func<T, string?> of)
    {
        DataField<string> field = new(name);
        return new(field, (group, rows) => group.WriteAsync(field, Array.ConvertAll(rows, row => of(row)!)));
    }

    /// <summary>A moment in UTC, to the millisecond.</summary>
    public static ParquetColumn<T> Moment(string name, Func<T, long> utcMilliseconds)
    {
        DateTimeDataField field = new(name, DateTimeFormat.Timestamp, isAdjustedToUTC: true, unit: DateTimeTimeUnit.Millis);
        return new(field, (group, rows) => group.WriteAsync<DateTime>(
            field, Array.ConvertAll(rows, row => DateTime.UnixEpoch.AddMilliseconds(utcMilliseconds(row)))));
    }
}
