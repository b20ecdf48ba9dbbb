// SPDX-License-Identifier: GPL-2.0
/*
 * An I2C bus (number 1) with scripted chips, by raw transfers; the kernel's own stub knows no raw ones.
 *
 * /sys/module/i2c_sim/parameters:
 *   set    "AA PP VV [fixed]", all hexadecimal: at address AA a read after a write that began with PP gives VV. What is
 *          written after PP becomes the new VV unless it is fixed: so registers are made. "AA - -" takes the chip away.
 *          A read that goes on beyond a register of a one-byte PP goes on in the next one.
 *   get    the same lines, as they stand now
 *   stuck  1: somebody holds the bus low; a transfer gives up after a second, as adapters do
 */
#include <linux/module.h>
#include <linux/delay.h>
#include <linux/hex.h>
#include <linux/i2c.h>

#define RULES		128
#define MOST_PREFIX	2
#define MOST_VALUE	16
#define ADDRESSES	128

struct rule {
	u8 address, prefix_length, value_length;
	bool used, fixed;
	u8 prefix[MOST_PREFIX], value[MOST_VALUE];
};

static struct rule rules[RULES];
static struct { u8 prefix[MOST_PREFIX], length; } pointer[ADDRESSES];
static DEFINE_MUTEX(gate);
static int stuck;
module_param(stuck, int, 0644);

static bool begins_with(const struct rule *r, u8 address, const u8 *bytes, int length)
{
	return r->used && r->address == address && r->prefix_length <= length &&
	       !memcmp(r->prefix, bytes, r->prefix_length);
}

/* The longest prefix wins. */
static struct rule *find(u8 address, const u8 *bytes, int length)
{
	struct rule *best = NULL;
	int i;

	for (i = 0; i < RULES; i++)
		if (begins_with(&rules[i], address, bytes, length) &&
		    (!best || rules[i].prefix_length > best->prefix_length))
			best = &rules[i];
	return best;
}

static bool is_there(u8 address)
{
	int i;

	for (i = 0; i < RULES; i++)
		if (rules[i].used && rules[i].address == address)
			return true;
	return false;
}

static void give(u8 address, u8 *to, int length)
{
	struct rule *r = find(address, pointer[address].prefix, pointer[address].length);
	int done = 0;

	memset(to, 0xff, length);
	while (r && done < length) {
		int part = min_t(int, r->value_length, length - done);
		u8 next = r->prefix[0] + 1;

		memcpy(to + done, r->value, part);
		done += part;
		r = part && r->prefix_length == 1 ? find(address, &next, 1) : NULL;
	}
}

static void take(u8 address, const u8 *bytes, int length)
{
	struct rule *r = find(address, bytes, length);
	int done;

	pointer[address].length = min(length, MOST_PREFIX);
	memcpy(pointer[address].prefix, bytes, pointer[address].length);
	done = r ? r->prefix_length : 0;
	while (r && done < length) {
		int part = min_t(int, r->value_length, length - done);
		u8 next = r->prefix[0] + 1;

		if (!r->fixed)
			memcpy(r->value, bytes + done, part);
		done += part;
		r = part && r->prefix_length == 1 ? find(address, &next, 1) : NULL;
	}
}

static int transfer(struct i2c_adapter *unused, struct i2c_msg *messages, int number)
{
	int i, done = number;

	if (stuck) {
		msleep(1000);
		return -ETIMEDOUT;
	}
	mutex_lock(&gate);
	for (i = 0; i < number; i++) {
		u8 address = messages[i].addr & (ADDRESSES - 1);

		if (!is_there(address)) {
			done = -ENXIO;
			break;
		}
		if (messages[i].flags & I2C_M_RD)
			give(address, messages[i].buf, messages[i].len);
		else
			take(address, messages[i].buf, messages[i].len);
	}
	mutex_unlock(&gate);
	return done;
}

static void remove_chip(u8 address)
{
	int i;

	for (i = 0; i < RULES; i++)
		if (rules[i].address == address)
			rules[i].used = false;
}

static int put(const struct rule *new)
{
	struct rule *free = NULL;
	int i;

	for (i = 0; i < RULES; i++) {
		struct rule *r = &rules[i];

		if (begins_with(r, new->address, new->prefix, new->prefix_length) &&
		    r->prefix_length == new->prefix_length) {
			*r = *new;
			return 0;
		}
		if (!r->used && !free)
			free = r;
	}
	if (!free)
		return -ENOSPC;
	*free = *new;
	return 0;
}

static int bytes_of(const char *text, u8 *bytes, int most)
{
	int length = strlen(text) / 2;

	return strlen(text) % 2 || length > most || hex2bin(bytes, text, length) ? -EINVAL : length;
}

static int set(const char *text, const struct kernel_param *unused)
{
	char address[3], prefix[2 * MOST_PREFIX + 1], value[2 * MOST_VALUE + 1], last[6] = "";
	struct rule r = { .used = true };
	int prefix_length, value_length, err = 0;

	if (sscanf(text, "%2s %4s %32s %5s", address, prefix, value, last) < 3 || bytes_of(address, &r.address, 1) != 1 ||
	    r.address >= ADDRESSES)
		return -EINVAL;
	mutex_lock(&gate);
	if (prefix[0] == '-') {
		remove_chip(r.address);
		goto out;
	}
	prefix_length = bytes_of(prefix, r.prefix, MOST_PREFIX);
	value_length = bytes_of(value, r.value, MOST_VALUE);
	r.fixed = !strcmp(last, "fixed");
	if (prefix_length < 0 || value_length < 0) {
		err = -EINVAL;
		goto out;
	}
	r.prefix_length = prefix_length;
	r.value_length = value_length;
	err = put(&r);
out:
	mutex_unlock(&gate);
	return err;
}

static int get(char *text, const struct kernel_param *unused)
{
	int i, n = 0;

	mutex_lock(&gate);
	for (i = 0; i < RULES; i++)
		if (rules[i].used)
			n += scnprintf(text + n, PAGE_SIZE - n, "%02x %*phN %*phN\n", rules[i].address,
				       rules[i].prefix_length, rules[i].prefix, rules[i].value_length, rules[i].value);
	mutex_unlock(&gate);
	return n;
}

static const struct kernel_param_ops written = { .set = set };
static const struct kernel_param_ops shown = { .get = get };
module_param_cb(set, &written, NULL, 0200);
module_param_cb(get, &shown, NULL, 0444);

static u32 functions(struct i2c_adapter *unused)
{
	return I2C_FUNC_I2C | I2C_FUNC_SMBUS_EMUL;
}

static const struct i2c_algorithm algorithm = { .master_xfer = transfer, .functionality = functions };
static struct i2c_adapter adapter = {
	.owner = THIS_MODULE, .name = "Simulated I2C bus", .algo = &algorithm, .nr = 1,
};

static int __init begin(void)
{
	return i2c_add_numbered_adapter(&adapter);
}

static void __exit end(void)
{
	i2c_del_adapter(&adapter);
}

module_init(begin);
module_exit(end);
MODULE_LICENSE("GPL");
MODULE_DESCRIPTION("I2C bus with scripted chips");
