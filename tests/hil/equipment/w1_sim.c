// SPDX-License-Identifier: GPL-2.0
/*
 * A 1-Wire bus master with simulated DS18B20 on its wire, bit by bit: the kernel's own search, checksum and conversion
 * times work on it as on a real wire.
 *
 * /sys/module/w1_sim/parameters:
 *   milli_c    temperature of each probe in 1/1000 degC, told at its next conversion
 *   behaviour  of each probe: 0 well, 1 gone from the wire, 2 shows its power-on value of 85 degC whenever it is
 *              read, 3 sends a wrong bit, which its checksum tells
 *   slot_us    time of a bit on the wire, 60 to 120 us on a real one (DS18B20 data sheet, from memory); 0 for none
 *   readings   whole readings of the wire, from the first conversion to the last bit of the last probe: how many,
 *              least ms, most ms; whatever is written begins the count anew
 *
 * Probe n (from 1) has the address 28-0000abcd00NN. Commands and scratchpad as in the DS18B20 data sheet (from memory).
 */
#include <linux/delay.h>
#include <linux/ktime.h>
#include <linux/module.h>
#include <linux/w1.h>

#define MOST_PROBES	16
#define ROM_LENGTH	8
#define PAD_LENGTH	9

enum { WELL, GONE, LOSES_POWER, WRONG_BIT };

static int count = 9;
module_param(count, int, 0444);
static int milli_c[MOST_PROBES] = { [0 ... MOST_PROBES - 1] = 20000 };
module_param_array(milli_c, int, NULL, 0644);
static int behaviour[MOST_PROBES];
module_param_array(behaviour, int, NULL, 0644);
static int slot_us = 70;
module_param(slot_us, int, 0644);

struct probe {
	u8 rom[ROM_LENGTH];
	u8 pad[PAD_LENGTH];
};

static const u8 power_on_pad[PAD_LENGTH - 1] = { 0x50, 0x05, 0x4b, 0x46, 0x7f, 0xff, 0x0c, 0x10 };
static struct probe probes[MOST_PROBES];

/* What the wire is in the midst of. The w1 core calls under its bus mutex, so there is one talk at a time. */
static struct {
	enum { SILENT, ROM_COMMAND, MATCHING, SEARCHING, FUNCTION, SENDING, TAKING } stage;
	u32 selected;		/* probes that still take part, a bit each */
	u64 asked_rom;
	int place;		/* bit of the search, or byte of what is matched, sent or taken */
	int phase;		/* of a search bit: 0 the bit, 1 its complement, 2 the choice */
	u8 bits;
	int bit_count;
	u8 sent[PAD_LENGTH];
	int sent_length;
} wire;

/* The reading of the wire that is under way, and those before it. */
static struct {
	ktime_t began;
	u32 converted, read;	/* probes, a bit each */
	int sending;		/* the probe whose scratchpad is on the wire, -1 for none */
	int whole;
	s64 least_ms, most_ms;
} reading = { .sending = -1 };

static int show_readings(char *text, const struct kernel_param *unused)
{
	return scnprintf(text, PAGE_SIZE, "%d %lld %lld\n", reading.whole, reading.least_ms, reading.most_ms);
}

static int forget_readings(const char *unused, const struct kernel_param *unused_too)
{
	reading.whole = 0;
	reading.least_ms = 0;
	reading.most_ms = 0;
	reading.converted = 0;
	return 0;
}

static const struct kernel_param_ops readings_ops = { .get = show_readings, .set = forget_readings };
module_param_cb(readings, &readings_ops, NULL, 0644);

static bool answers(int i)
{
	return behaviour[i] != GONE;
}

static u32 all_there(void)
{
	u32 mask = 0;
	int i;

	for (i = 0; i < count; i++)
		if (answers(i))
			mask |= BIT(i);
	return mask;
}

static u64 rom_of(int i)
{
	u64 rom = 0;
	int k;

	for (k = ROM_LENGTH - 1; k >= 0; k--)
		rom = rom << 8 | probes[i].rom[k];
	return rom;
}

/* Another conversion of a probe that was read begins anew; so does one before the reading before it came to its end. */
static void note_conversion(u32 selected)
{
	if (!reading.converted || (selected & (reading.converted | reading.read))) {
		reading.began = ktime_get();
		reading.converted = 0;
		reading.read = 0;
	}
	reading.converted |= selected;
}

static void note_read(void)
{
	s64 took;

	if (reading.sending < 0)
		return;
	reading.read |= BIT(reading.sending) & reading.converted;
	reading.sending = -1;
	if (!reading.converted || (reading.read & all_there()) != all_there())
		return;
	took = ktime_ms_delta(ktime_get(), reading.began);
	reading.least_ms = reading.whole ? min(reading.least_ms, took) : took;
	reading.most_ms = max(reading.most_ms, took);
	reading.whole++;
	reading.converted = 0;
}

static void seal(struct probe *p)
{
	p->pad[PAD_LENGTH - 1] = w1_calc_crc8(p->pad, PAD_LENGTH - 1);
}

static void power_on(struct probe *p)
{
	memcpy(p->pad, power_on_pad, sizeof(power_on_pad));
	seal(p);
}

static void convert(int i)
{
	int sixteenths = milli_c[i] * 16 / 1000;

	probes[i].pad[0] = sixteenths & 0xff;
	probes[i].pad[1] = sixteenths >> 8 & 0xff;
	seal(&probes[i]);
}

static void send(const u8 *bytes, int length)
{
	memcpy(wire.sent, bytes, length);
	wire.sent_length = length;
	wire.place = 0;
	wire.stage = SENDING;
}

static void send_pad(int i)
{
	if (behaviour[i] == LOSES_POWER)
		power_on(&probes[i]);
	send(probes[i].pad, PAD_LENGTH);
	reading.sending = i;
	if (behaviour[i] == WRONG_BIT)
		wire.sent[0] ^= 0x10;
}

static void begin(u8 command)
{
	static const u8 own_supply = 0xff;
	int i;

	wire.stage = SILENT;
	if (command == 0x44)
		note_conversion(wire.selected);
	for (i = 0; i < count; i++) {
		if (!(wire.selected & BIT(i)))
			continue;
		switch (command) {
		case 0x44: convert(i); break;			/* convert */
		case 0xbe: send_pad(i); break;			/* read scratchpad */
		case 0xb4: send(&own_supply, 1); break;		/* read power supply */
		case 0x4e: wire.place = 2; wire.stage = TAKING; break;	/* write scratchpad */
		}
	}
}

static void take(u8 byte)
{
	int i;

	for (i = 0; i < count; i++) {
		if (wire.selected & BIT(i)) {
			probes[i].pad[wire.place] = byte;
			seal(&probes[i]);
		}
	}
	if (++wire.place > 4)	/* alarms and configuration */
		wire.stage = SILENT;
}

static void match(u8 byte)
{
	int i;

	wire.asked_rom |= (u64)byte << 8 * wire.place;
	if (++wire.place < ROM_LENGTH)
		return;
	wire.selected = all_there();
	for (i = 0; i < count; i++)
		if (rom_of(i) != wire.asked_rom)
			wire.selected &= ~BIT(i);
	wire.stage = wire.selected ? FUNCTION : SILENT;
}

static void choose(u8 command)
{
	wire.place = 0;
	wire.phase = 0;
	wire.asked_rom = 0;
	wire.selected = all_there();
	switch (command) {
	case 0xf0: wire.stage = SEARCHING; break;
	case 0x55: wire.stage = MATCHING; break;
	case 0xcc: wire.stage = FUNCTION; break;	/* all at once */
	default: wire.stage = SILENT; break;		/* no alarm search: nobody alarms */
	}
}

static u8 search(u8 bit)
{
	u8 seen = 1;
	int i;

	for (i = 0; i < count; i++) {
		u8 own = rom_of(i) >> wire.place & 1;

		if (!(wire.selected & BIT(i)))
			continue;
		if (wire.phase < 2)
			seen &= wire.phase ? !own : own;
		else if (own != (bit & 1))
			wire.selected &= ~BIT(i);
	}
	if (++wire.phase < 3)
		return seen;
	wire.phase = 0;
	if (++wire.place == 8 * ROM_LENGTH)
		wire.stage = SILENT;
	return bit;
}

static u8 sent_bit(void)
{
	u8 bit;

	if (wire.place >= wire.sent_length)
		return 1;
	bit = wire.sent[wire.place] >> wire.bit_count & 1;
	if (++wire.bit_count == 8) {
		wire.bit_count = 0;
		if (++wire.place == wire.sent_length)
			note_read();
	}
	return bit;
}

/* The time of the bits on the wire, slept for eight at once. */
static void pass(int slots)
{
	static int owed;

	owed += slots;
	if (owed < 8)
		return;
	if (slot_us > 0)
		usleep_range(owed * slot_us, owed * slot_us + 50);
	owed = 0;
}

static u8 touch_bit(void *unused, u8 bit)
{
	pass(1);
	if (wire.stage == SILENT)
		return 1;
	if (wire.stage == SENDING)
		return bit ? sent_bit() : 0;
	if (wire.stage == SEARCHING)
		return search(bit);

	wire.bits = wire.bits >> 1 | (bit ? 0x80 : 0);
	if (++wire.bit_count == 8) {
		wire.bit_count = 0;
		switch (wire.stage) {
		case ROM_COMMAND: choose(wire.bits); break;
		case MATCHING: match(wire.bits); break;
		case FUNCTION: begin(wire.bits); break;
		default: take(wire.bits); break;
		}
	}
	return bit;
}

/* 0: somebody answered with a presence pulse. */
static u8 reset_bus(void *unused)
{
	/* 480 us down and as long to answer (data sheet, from memory). */
	pass(14);
	wire.stage = ROM_COMMAND;
	wire.bit_count = 0;
	return all_there() ? 0 : 1;
}

static struct w1_bus_master master = { .touch_bit = touch_bit, .reset_bus = reset_bus };

static int __init begin_bus(void)
{
	int i;

	count = clamp(count, 0, MOST_PROBES);
	for (i = 0; i < count; i++) {
		u8 rom[ROM_LENGTH] = { 0x28, i + 1, 0x00, 0xcd, 0xab };

		rom[ROM_LENGTH - 1] = w1_calc_crc8(rom, ROM_LENGTH - 1);
		memcpy(probes[i].rom, rom, sizeof(rom));
		power_on(&probes[i]);
	}
	return w1_add_master_device(&master);
}

static void __exit end_bus(void)
{
	w1_remove_master_device(&master);
}

module_init(begin_bus);
module_exit(end_bus);
MODULE_LICENSE("GPL");
MODULE_DESCRIPTION("Simulated 1-Wire bus with DS18B20");
