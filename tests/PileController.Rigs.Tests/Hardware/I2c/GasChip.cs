namespace PileController.Rigs.Tests.Hardware.I2c;

/// <summary>
/// A carbon dioxide probe at the level of its commands: it measures every five seconds once it was started, gives each
/// measurement once, and forgets that it was started when its supply goes.
/// </summary>
internal sealed class GasChip(TimeProvider time) : FakeChip
{
    private const int EverySeconds = 5;
    private int _command;
    private long? _startedAt;
    private int _given;

    /// <summary>The air, ppm.</summary>
    public ushort Ppm { get; set; } = 700;

    /// <summary>How many times it was started.</summary>
    public int Starts { get; private set; }

    /// <summary>Whether nobody pulls the line low.</summary>
    public bool IsGone { get; set; }

    /// <summary>The byte of each answer in which a bit is turned on the way; null for none.</summary>
    public int? Disturbed { get; set; }

    /// <summary>Takes its supply away and gives it back.</summary>
    public void LoseSupply() => _startedAt = null;

    protected override void Take(ReadOnlySpan<byte> bytes)
    {
        Assert.Equal(2, bytes.Length);
        _command = (bytes[0] << 8) | bytes[1];
        switch (_command)
        {
            case 0x21B1 when _startedAt is null:
                (_startedAt, _given) = (time.GetTimestamp(), 0);
                Starts++;
                break;
            case 0x3F86 when _startedAt is not null:
                _startedAt = null;
                break;
            case 0xE4B8:
                break;
            case 0xEC05 when Made() > _given:
                break;
            default:
                throw new IOException("Error 121 performing I2C data transfer.");
        }
    }

    protected override void Answer(Span<byte> bytes)
    {
        byte[] answer = _command == 0xE4B8
            ? AirChip.Word((ushort)(Made() > _given ? 0x8006 : 0x8000))
            : [.. AirChip.Word(Ppm), .. AirChip.Word(0x6666), .. AirChip.Word(0x8000)];
        if (_command == 0xEC05)
        {
            _given = Made();
        }

        answer.CopyTo(bytes);
        if (IsGone)
        {
            bytes.Fill(0xFF);
        }

        if (Disturbed is { } place && place < bytes.Length)
        {
            bytes[place] ^= 0x04;
        }
    }

    private int Made() => _startedAt is { } since ? (int)(time.GetElapsedTime(since).TotalSeconds / EverySeconds) : 0;
}
